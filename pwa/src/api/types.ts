/** The documents by name, as the server's OpenAPI document describes them. */
import type { components } from "./schema";

type Schemas = components["schemas"];

export type Block = Schemas["Block"];
export type Week = Schemas["Week"];
export type SessionPlan = Schemas["Session"];
export type ExercisePlan = Schemas["Exercise"];
export type SetPlan = Schemas["Set"];
export type LoadWish = SetPlan["load"];
export type Rest = Schemas["Rest"];
export type RampStep = Schemas["RampStep"];
export type Progression = NonNullable<ExercisePlan["progression"]>;
export type LightWeek = Schemas["LightWeek"];
export type Rig = Schemas["Rig"];

export type Method = ExercisePlan["method"];
export type Implement = NonNullable<ExercisePlan["implement"]>;

export type Kit = Schemas["Kit"];
export type Athlete = Schemas["Athlete"];
export type Maximum = Schemas["Maximum"];

export type LoadSheet = Schemas["LoadSheet"];
export type SheetExercise = Schemas["SheetExercise"];
export type SheetSet = Schemas["SheetSet"];
export type SheetLoad = Schemas["SheetLoad"];
export type SheetOcclusion = Schemas["SheetOcclusion"];
export type OcclusionRule = Schemas["OcclusionRule"];
