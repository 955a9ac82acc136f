/** The desk's questions to the server, one function each. */
import { addressOf, get, post, type AskOptions } from "../api/client";
import { upload } from "../api/upload";
import type { Athlete, Block, Kit, LightWeek, Rig } from "../api/types";
import type {
  AcceptAnswer,
  AcceptedLoad,
  AthleteExercises,
  AthletePage,
  BlockAnswer,
  BlockLine,
  Calculation,
  Calculator,
  CatalogueEntry,
  Clearance,
  Coach,
  ExercisePage,
  FactorBegun,
  Condition,
  FoundRigs,
  HandOverSeen,
  HandOverTaken,
  HeldEntry,
  Invitation,
  KitProposal,
  LoadSeen,
  LogIn,
  LoadsAnswer,
  MeasuredPressure,
  Named,
  NewInvitation,
  NewOffer,
  OcclusionGuide,
  Offer,
  OfferAsked,
  OfferTaken,
  OpenedOffer,
  Overrule,
  OwnBlock,
  OwnPlace,
  OwnSaved,
  PairingCode,
  Proposals,
  Results,
  SavedBlock,
  ScreeningPage,
  SendAnswer,
  SecondFactor,
  Sharer,
  Sharing,
  SheetsAnswer,
  Signing,
  SpeedExercise,
  SquadLine,
  Trend,
  UnfoldAnswer,
  WorkWeek,
} from "./answers";
import type { RuleAsked } from "./block/unfolding";

const athletePath = (id: string, rest = "") => `/desk/athletes/${encodeURIComponent(id)}${rest}`;
const blockPath = (id: string, rest = "") => `/desk/blocks/${encodeURIComponent(id)}${rest}`;

/** Refused as code-needed where the password is right and a code is wanted as well. */
export const logIn = (email: string, password: string, code?: string) =>
  post<Coach>("/coach/log-in", { email, password, code });
export const logOut = () => post("/coach/log-out");
export const me = () => get<Coach>("/coach/me");

export const logIns = async () =>
  (await get<{ log_ins: readonly LogIn[] }>("/coach/log-ins")).log_ins;
export const revokeLogIn = (id: string, password: string) =>
  post(`/coach/log-ins/${encodeURIComponent(id)}/revoke`, { password });
export const changePassword = (old: string, fresh: string, code?: string) =>
  post("/coach/password", { old, new: fresh, code });

export const secondFactor = () => get<SecondFactor>("/coach/second-factor");
export const beginFactor = () => post<FactorBegun>("/coach/second-factor/begin");
export const turnFactorOn = (password: string, code: string) =>
  post<{ codes: readonly string[] }>("/coach/second-factor/on", { password, code });
export const turnFactorOff = (password: string, code: string) =>
  post("/coach/second-factor/off", { password, code });

export const sharing = (id: string) => get<Sharing>(athletePath(id, "/sharing"));
const sharerPath = (id: string, coach: string, rest: string) =>
  athletePath(id, `/sharing/${encodeURIComponent(coach)}/${rest}`);
export const changeRight = (id: string, coach: string, right: Sharer["right"]) =>
  post(sharerPath(id, coach, "right"), { right });
export const endSharing = (id: string, coach: string) => post(sharerPath(id, coach, "end"));
export const leaveAthlete = (id: string) => post(athletePath(id, "/sharing/leave"));
export const offers = async () => (await get<{ offers: readonly Offer[] }>("/desk/offers")).offers;
export const makeOffer = (asked: OfferAsked) => post<NewOffer>("/desk/offers", asked);
export const revokeOffer = (id: string) => post(`/desk/offers/${encodeURIComponent(id)}/revoke`);
export const lookAtOffer = (secret: string) => post<OpenedOffer>("/desk/offers/look", { secret });
export const acceptOffer = (secret: string) => post<OfferTaken>("/desk/offers/accept", { secret });
export const archiveAddress = (id: string) => addressOf(athletePath(id, "/archive"));
export const eraseAthlete = (id: string, name: string) => post(athletePath(id, "/erase"), { name });

export const squad = async () =>
  (await get<{ athletes: readonly SquadLine[] }>("/desk/squad")).athletes;
export const addAthlete = (name: string) => post<Named>("/desk/athletes", { name });

export const athlete = (id: string) => get<AthletePage>(athletePath(id));
export const saveAthlete = (id: string, document: Athlete) =>
  post<{ document: Athlete }>(athletePath(id, "/document"), { document });
export const saveKit = (id: string, document: Kit) =>
  post<{ document: Kit }>(athletePath(id, "/kit"), { document });

const proposalPath = (id: string, proposal: string, rest: string) =>
  athletePath(id, `/kit/proposals/${encodeURIComponent(proposal)}/${rest}`);
export const kitProposals = async (id: string) =>
  (await get<{ proposals: readonly KitProposal[] }>(athletePath(id, "/kit/proposals"))).proposals;
export const acceptProposal = (id: string, proposal: string) =>
  post<{ document: Kit }>(proposalPath(id, proposal, "accept"));
export const declineProposal = (id: string, proposal: string) =>
  post(proposalPath(id, proposal, "decline"));

export const invite = (id: string) => post<NewInvitation>(athletePath(id, "/invitations"));
export const invitations = async (id: string) =>
  (await get<{ invitations: readonly Invitation[] }>(athletePath(id, "/invitations"))).invitations;
export const revokeInvitation = (id: string, invitation: string) =>
  post(athletePath(id, `/invitations/${encodeURIComponent(invitation)}/revoke`));
export const makeCode = (id: string) => post<PairingCode>(athletePath(id, "/codes"));
export const revokeDevice = (id: string, device: string) =>
  post(athletePath(id, `/devices/${encodeURIComponent(device)}/revoke`));

export const lookAtHandOver = (id: string, text: string) =>
  post<HandOverSeen>(athletePath(id, "/hand-over/look"), { text }, { zip: true });
export const takeHandOver = (id: string, text: string) =>
  post<HandOverTaken>(athletePath(id, "/hand-over"), { text }, { zip: true });

export const held = async (id: string) =>
  (await get<{ held: readonly HeldEntry[] }>(athletePath(id, "/held"))).held;
export const acceptHeld = (id: string, position: number) =>
  post(athletePath(id, `/held/${position}/accept`));

export const results = (id: string) => get<Results>(athletePath(id, "/results"));
export const trend = (id: string, lift: string) =>
  get<Trend>(athletePath(id, `/maxima/${encodeURIComponent(lift)}`));

export const proposals = (id: string) => get<Proposals>(athletePath(id, "/proposals"));
/** `revision` is the one that the loads were proposed for. */
export const acceptProposals = (
  id: string,
  revision: number,
  sets: readonly AcceptedLoad[],
  overrules: readonly Overrule[] = [],
) => post<AcceptAnswer>(athletePath(id, "/proposals/accept"), { revision, sets, overrules });
export const sheets = (id: string) => get<SheetsAnswer>(athletePath(id, "/sheets"));

export const sessionLoad = (id: string, weeks: number) =>
  get<LoadSeen>(athletePath(id, `/load?weeks=${weeks}`));
export const work = async (id: string, weeks: number) =>
  (await get<{ weeks: readonly WorkWeek[] }>(athletePath(id, `/work?weeks=${weeks}`))).weeks;
export const speed = async (id: string, weeks: number) =>
  (await get<{ exercises: readonly SpeedExercise[] }>(athletePath(id, `/speed?weeks=${weeks}`)))
    .exercises;
export const condition = (id: string, weeks: number) =>
  get<Condition>(athletePath(id, `/condition?weeks=${weeks}`));
/** One of the tables as a CSV file, over so many weeks where it has any. */
export const tableAddress = (id: string, table: string, weeks = 12) =>
  addressOf(athletePath(id, `/tables/${table}?weeks=${weeks}`));

const screeningPath = (id: string, rest = "") => athletePath(id, `/screening${rest}`);
export const screening = (id: string) => get<ScreeningPage>(screeningPath(id));
export const askForScreening = (id: string) => post<ScreeningPage>(screeningPath(id, "/ask"));
export const signScreening = (id: string, signing: Signing) =>
  post<ScreeningPage>(screeningPath(id, "/sign"), signing);
/** What is left out of these two is refused at its field. */
export const recordClearance = (id: string, clearance: Partial<Clearance>) =>
  post<ScreeningPage>(screeningPath(id, "/clearances"), clearance);
export const recordPressure = (id: string, measured: Partial<MeasuredPressure>) =>
  post<ScreeningPage>(screeningPath(id, "/pressures"), measured);
export const withdrawRecord = (id: string, number: number) =>
  post<ScreeningPage>(screeningPath(id, `/records/${number}/withdraw`));
export const occlusionGuide = () => get<OcclusionGuide>("/desk/occlusion");

export const catalogue = async () =>
  (await get<{ exercises: readonly CatalogueEntry[] }>("/desk/catalogue")).exercises;

export const exercise = (key: string) =>
  get<ExercisePage>(`/desk/exercises/${encodeURIComponent(key)}`);
export const addExercise = (document: Readonly<Record<string, unknown>>) =>
  post<{ key: string }>("/desk/exercises", { document });
const exercisePath = (key: string, rest = "") =>
  `/desk/exercises/${encodeURIComponent(key)}${rest}`;
export const changeExercise = (key: string, document: Readonly<Record<string, unknown>>) =>
  post(exercisePath(key), { document });
export const setCues = (key: string, cues: readonly string[]) =>
  post(exercisePath(key, "/cues"), { cues });
export const archiveExercise = (key: string) => post(exercisePath(key, "/archive"));
export const restoreExercise = (key: string) => post(exercisePath(key, "/restore"));
export const removeExercise = (key: string) => post(exercisePath(key, "/remove"));
const picturePath = (key: string, rest = "") => exercisePath(key, `/picture${rest}`);
/** `onShare` hears how much of the file has gone up, from 0 to 1. */
export const addPicture = (
  key: string,
  file: Blob,
  words: string,
  onShare: (share: number) => void,
) => upload(picturePath(key, `?words=${encodeURIComponent(words)}`), file, onShare);
export const setPictureWords = (key: string, words: string) =>
  post(picturePath(key, "/words"), { words });
export const removePicture = (key: string) => post(picturePath(key, "/remove"));
export const pictureAddress = (hash: string) => addressOf(`/desk/pictures/${hash}`);
export const exercisesFor = (id: string) => get<AthleteExercises>(athletePath(id, "/exercises"));

export const blocks = async () =>
  (await get<{ blocks: readonly BlockLine[] }>("/desk/blocks")).blocks;
export const block = (id: string) => get<BlockAnswer>(blockPath(id));
export const newBlock = (document: Block) => post<SavedBlock>("/desk/blocks", { document });
export const saveBlock = (id: string, document: Block) =>
  post<SavedBlock>(blockPath(id), { document });
export const readBlock = (text: string, format: "json" | "csv") =>
  post<{ document: Block }>("/desk/blocks/read", { text, format });
export const exportAddress = (id: string, format: "json" | "csv") =>
  addressOf(blockPath(id, `/export?format=${format}`));

/** With a block's id the athlete's own changes to that block count. */
export const loads = (
  document: Block,
  athleteId: string,
  { block: id, ...options }: AskOptions & { readonly block?: string } = {},
) =>
  post<LoadsAnswer>(
    "/desk/loads",
    { document, athlete: athleteId, ...(id ? { block: id } : {}) },
    options,
  );

const ownPath = (id: string, athleteId: string, rest = "") =>
  blockPath(id, `/own/${encodeURIComponent(athleteId)}${rest}`);
export const ownBlock = (id: string, athleteId: string) => get<OwnBlock>(ownPath(id, athleteId));
export const saveOwn = (id: string, athleteId: string, document: Block, as_of: string) =>
  post<OwnSaved>(ownPath(id, athleteId), { document, as_of });
/** `block`: the block's lines count there again; `own`: what is own stays, though they changed. */
export const decideOwn = (
  id: string,
  athleteId: string,
  places: readonly OwnPlace[],
  take: "own" | "block",
) => post<OwnBlock>(ownPath(id, athleteId, "/decide"), { places, take });

interface SoughtRig {
  readonly document: Block;
  readonly athlete: string;
  readonly session: string;
  readonly exercise: string;
  readonly rig: Rig;
}
export const findRigs = (sought: SoughtRig, options: AskOptions = {}) =>
  post<FoundRigs>("/desk/rigs", sought, options);
/** What is to be unfolded: a week by its key, into how many, by which rules. */
export interface UnfoldAsked {
  readonly document: Block;
  readonly week: string;
  readonly weeks: number;
  readonly rules: readonly RuleAsked[];
  readonly light_week?: LightWeek;
  readonly anew: boolean;
  readonly athlete?: string;
  /** The block's id: the athlete's own changes to it count in the loads. */
  readonly block?: string;
}

export const unfold = (asked: UnfoldAsked, options: AskOptions = {}) =>
  post<UnfoldAnswer>("/desk/unfold", asked, options);
/** `startsOn` is the Monday of the first week; without it this week's, or where the block began. */
export const send = (
  id: string,
  athletes: readonly string[],
  startsOn: string,
  overrules: readonly Overrule[] = [],
) =>
  post<SendAnswer>(blockPath(id, "/send"), {
    athletes,
    ...(startsOn ? { starts_on: startsOn } : {}),
    ...(overrules.length > 0 ? { overrules } : {}),
  });

export const calculators = async () =>
  (await get<{ calculators: readonly Calculator[] }>("/desk/calculators")).calculators;
export const calculate = (
  key: string,
  inputs: Readonly<Record<string, unknown>>,
  options: AskOptions = {},
) => post<Calculation>(`/desk/calculators/${encodeURIComponent(key)}`, { inputs }, options);
