/** What the server answers at the desk. Moments are ISO 8601 in UTC, masses kilograms. */
import type { components } from "../api/schema";
import type { Athlete, Block, Implement, Kit, LoadSheet, Rig } from "../api/types";

type Schemas = components["schemas"];

/** An answer as it comes: its description leaves every field open, yet the server fills them all. */
type Filled<T> = T extends LoadSheet
  ? T
  : T extends readonly (infer Item)[]
    ? readonly Filled<Item>[]
    : T extends object
      ? { readonly [Field in keyof T]-?: Filled<T[Field]> }
      : T;

type Answer<Name extends keyof Schemas> = Filled<Schemas[Name]>;

/** The same, with documents and names in place of what its description leaves open. */
type AnswerWith<Name extends keyof Schemas, Known> = Omit<Answer<Name>, keyof Known> & Known;

export type Coach = Answer<"CoachAnswer">;
export type Named = Answer<"Named">;

export type SquadLine = Answer<"SquadLineAnswer">;
export type Attention = Answer<"AttentionAnswer">;
/** How far a revision has come; each is the moment that it got there. */
export type Stages = Answer<"StatesAnswer">;

export type MaximumNow = Answer<"MaximumAnswer">;
export type Device = Answer<"DeviceAnswer">;
export type AthletePage = AnswerWith<
  "AthletePageAnswer",
  { readonly document: Athlete; readonly kit: Kit | null }
>;

export type Invitation = Answer<"InvitationAnswer">;
/** Told once, when the invitation is made: the server keeps no copy of the secret. */
export type NewInvitation = Answer<"InvitationMade">;
export type PairingCode = Answer<"CodeAnswer">;
export type Offer = Answer<"SharingOfferAnswer">;
export type OpenedOffer = Answer<"SharingOfferOpenedAnswer">;
/** A link of an own offer, told once. */
export type NewOffer = Answer<"OfferMadeAnswer">;
export type OfferTaken = Answer<"OfferTakenAnswer">;
export type OfferAsked = {
  readonly athletes: readonly string[];
  readonly gives: "read" | "write" | "own";
  readonly keeps: "read" | null;
};
export type Sharer = Answer<"SharerAnswer">;
export type Sharing = Answer<"SharingAnswer">;
export type LogIn = Answer<"LogInAnswer">;
export type SecondFactor = Answer<"FactorAnswer">;
/** Told once, when the secret is made. */
export type FactorBegun = Answer<"FactorBegun">;

/** Its `sent` is the entry as it came; it may be anything. */
export type HeldEntry = Answer<"HeldAnswer">;

/** A change of the kit that the athlete proposes; its `change` is as the phone sent it. */
export type KitProposal = Answer<"ProposalAnswer">;

/** What a phone's hand-over file holds, and what became of it. */
export type HandOverSeen = Answer<"HandOverSeenAnswer">;
export type HandOverTaken = Answer<"HandOverTakenAnswer">;

export type CatalogueEntry = AnswerWith<"ExerciseSeenAnswer", { readonly implement: Implement }>;
/** What a coach writes of an own exercise; heights are shares of stature. */
export type OwnExercise = Omit<CatalogueEntry, "key" | "own" | "own_cues" | "archived">;

export type ExercisePage = AnswerWith<
  "ExercisePageAnswer",
  { readonly exercise: CatalogueEntry; readonly picture: Picture | null }
>;
/** A photo or clip of an exercise; its words tell it to those who do not see it. */
export type Picture = Answer<"PictureAnswer">;
/** An exercise for one athlete; heights in cm, `told_by` says what would tell them. */
export type ForAthlete = Answer<"ForAthleteAnswer">;
export type AthleteExercises = Answer<"AthleteExercisesAnswer">;

export type BlockLine = Answer<"BlockLineAnswer">;
export type BlockAnswer = AnswerWith<"BlockAnswer", { readonly document: Block }>;
export type SavedBlock = Answer<"SavedAnswer">;

/** What a check, or working out the loads, has to say of one place in a block. */
export type Finding = Answer<"FindingAnswer">;
export type LoadsAnswer = Answer<"LoadsAnswer">;
/** One place where an athlete does otherwise than the block says. */
export type OwnLine = Answer<"OwnLineAnswer">;
/** A block as one athlete does it; `as_of` names the state that this was made from. */
export type OwnBlock = AnswerWith<"OwnAnswer", { readonly document: Block }>;
export type OwnSaved = Answer<"OwnSavedAnswer">;
export type OwnPlace = Readonly<Required<Schemas["OwnPlace"]>>;
/** One rig that a kit can make; its `rig` is what a plan says to hang it. */
export type RigOffer = AnswerWith<"OfferAnswer", { readonly rig: Rig }>;
export type RigOffers = AnswerWith<"OffersAnswer", { readonly offers: readonly RigOffer[] }>;
/** `found`, or in `none` why nothing could be looked for. */
export type FoundRigs = AnswerWith<"FoundRigsAnswer", { readonly found: RigOffers | null }>;
/** One set in one week of the table of loads. */
export type LoadCell = Answer<"CellAnswer">;
/** An exercise through the weeks of the table of loads. */
export type LoadRow = Answer<"TableRowAnswer">;
/** Without a document where there are faults. */
export type UnfoldAnswer = AnswerWith<"UnfoldAnswer", { readonly document: Block | null }>;
/** A stop that is set aside, and the reason in writing. */
export type Overrule = Readonly<Schemas["OverruleAsked"]>;
export type SendAnswer = Answer<"SendAnswer">;
/** An athlete who got nothing, and what stands in the way. */
export type Refusal = Answer<"RefusedOne">;

/** What the loads of the week ahead should become, set by set. */
export type Proposals = Answer<"LoadProposalsAnswer">;
export type SessionProposals = Answer<"SessionProposalsAnswer">;
export type SetProposal = Answer<"SetProposalAnswer">;
export type AcceptedLoad = Readonly<Schemas["AcceptedLoad"]>;
export type AcceptAnswer = Answer<"AcceptAnswer">;

/** The load sheets that an athlete has. */
export type SheetsAnswer = Answer<"SheetsAnswer">;

export type Planned = Answer<"PlannedAnswer">;
export type Done = Answer<"DoneAnswer">;
export type ResultSet = Answer<"SetResultAnswer">;
export type ResultExercise = Answer<"ExerciseResultAnswer">;
export type ResultSession = Answer<"SessionResultAnswer">;
/** An exercise with a wrap or cuff on: what was asked, and what its repetitions ask for. */
export type OcclusionResult = Answer<"OcclusionSeenAnswer">;
/** How long one limb had a wrap or cuff on, and what is to be said of it. */
export type Worn = Answer<"WornAnswer">;
export type Issue = Answer<"IssueAnswer">;
/** Work that names a revision, session or set that was never sent. */
export type OutsideResult = Answer<"OutsideAnswer">;
/** What the athlete wrote; its time is what the phone's clock said. */
export type Message = Answer<"MessageAnswer">;
export type Results = Answer<"ResultsAnswer">;

/** `smooth_*` look back over the whole series; the others knew only what came before. */
export type TrendPoint = Answer<"PointAnswer">;
export type Trend = Answer<"TrendAnswer">;

export type Calculator = Answer<"CalculatorAnswer">;
/** What a calculator is given; a list says in `of` what each of its items holds. */
export type CalculatorInput = Calculator["inputs"][number];
export type Calculation = Answer<"CalculationAnswer">;
/** Loads in arbitrary units (au): session RPE times minutes. */
export type LoadSeen = Answer<"LoadAnswer">;
export type LoadDay = Answer<"DayAnswer">;
export type LoadWeek = Answer<"WeekAnswer">;
export type WorkWeek = Answer<"WorkWeekAnswer">;

export type ScreeningPage = AnswerWith<
  "ScreeningPageAnswer",
  { readonly records: readonly ScreeningRecord[] }
>;
export type Outcome = ScreeningPage["lock"]["outcome"];
/** One set of answers, as it came from the phone. */
export type Answered = Answer<"AnsweredAnswer">;
export type ScreeningReply = Answer<"ScreeningReplyAnswer">;
export type ScreeningReason = Answer<"ScreeningReasonAnswer">;

export type Clearance = Readonly<Schemas["Clearance"]>;
export type MeasuredPressure = Readonly<Schemas["Measured"]>;
export type Signing = Readonly<Schemas["Signing"]>;
type Kept<Kind extends string, Body> = Omit<Answer<"ScreeningRecordAnswer">, "kind" | "body"> & {
  readonly kind: Kind;
  readonly body: Body;
};
/** What the coach recorded; withdrawn ones stay in sight. */
export type ScreeningRecord =
  | Kept<"signature", Signing & { readonly by: string; readonly on: string }>
  | Kept<"clearance", Clearance>
  | Kept<"pressure", MeasuredPressure>;

/** Patterns of sets for occlusion work, and the limits that nobody moves. */
export type OcclusionGuide = Answer<"OcclusionGuideAnswer">;
export type OcclusionPattern = OcclusionGuide["patterns"][number];
export type SpeedExercise = Answer<"SpeedExerciseAnswer">;
export type SpeedSession = Answer<"SpeedSessionAnswer">;
export type SpeedSet = Answer<"SpeedSetAnswer">;
/** A lift's loads with their velocities, and the line through them where there is one. */
export type VelocitySeen = Answer<"VelocityAnswer">;
export type VelocityLine = Answer<"VelocityLineAnswer">;
export type Condition = Answer<"ConditionAnswer">;
