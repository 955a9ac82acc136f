import type { OcclusionKnown } from "./known";
import type { SheetExercise } from "../../api/types";
import { minutesSeconds } from "../words/times";
import { aboutMinutes, capital, pieceIn, ruleOf, setsInWords } from "./words";

interface Props {
  readonly exercise: SheetExercise;
  readonly known: OcclusionKnown;
  /** Numb once today: looser than before. */
  readonly looser?: boolean;
}

/** How tight to aim for: one less after a limb went numb. */
export function aimOf(exercise: SheetExercise, looser = false): number | null {
  const most = exercise.occlusion?.most_tightness;
  if (most === undefined) return null;
  const aim = Math.min(most, ruleOf(exercise)?.tightness ?? most);
  return looser ? Math.max(0, aim - 1) : aim;
}

/** Tightness or pressure, large: what has to be read from two metres. */
export function Setting({ exercise, known, looser = false }: Props) {
  const { pressure_mmhg, pressure_basis, most_tightness } = exercise.occlusion ?? {};
  if (ruleOf(exercise)?.restriction === "cuff")
    return (
      <div class="setting">
        <p class="setting-figure">
          {pressure_mmhg ?? "–"} <span class="load-unit">mmHg</span>
        </p>
        <p>{pressure_basis || "No pressure is known for this cuff: ask your coach."}</p>
      </div>
    );
  const aim = aimOf(exercise, looser);
  return (
    <div class="setting">
      <p class="setting-figure">
        {aim ?? "–"} <span class="load-unit">of 10 tight</span>
      </p>
      <p>
        {looser && "Looser than before. "}
        At most {most_tightness}.{" "}
        {known.questions.tightness.map(({ value, text }) => `${value} is ${text}`).join(", ")}.
      </p>
    </div>
  );
}

/** What is to be done with it on, and for how long. */
export function Doses({ exercise }: Pick<Props, "exercise">) {
  const { occlusion, rest, sets } = exercise;
  if (!occlusion) return null;
  const from = rest?.from_s ?? 0;
  const to = rest?.to_s ?? from;
  const piece = pieceIn(exercise, false);
  return (
    <dl class="doses">
      <dt>Reps</dt>
      <dd class="dose-reps">{setsInWords(sets)}</dd>
      <dt>Rests</dt>
      <dd>
        {from === to ? `${from} s` : `${from} to ${to} s`}, {piece} on
      </dd>
      <dt>On</dt>
      <dd>
        {aboutMinutes(occlusion.wear_s)}, off by {minutesSeconds(occlusion.limit_s)}
      </dd>
      <dd class="dose-rung">{capital(occlusion.rung)}.</dd>
      {occlusion.limits && <dd class="dose-rung">{occlusion.limits}</dd>}
    </dl>
  );
}
