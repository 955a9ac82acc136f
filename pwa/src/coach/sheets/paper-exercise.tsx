import type { SheetExercise } from "../../api/types";
import { restInWords } from "../block/wish-words";
import { marginInWords, orderInWords } from "../writer/handling";
import { askedInWords, boxesOf, paperLoad, warmUpInWords, wearInWords } from "./paper-words";

interface PaperExerciseProps {
  readonly exercise: SheetExercise;
  readonly mark: string;
  /** What ends work with a wrap or cuff on, in words. */
  readonly signs: readonly string[];
}

/** An exercise on paper: what to know before, a row for each set, boxes to write in. */
export function PaperExercise({ exercise, mark, signs }: PaperExerciseProps) {
  const ramp = warmUpInWords(exercise);
  return (
    <section>
      <h3>
        {mark}. {exercise.name} <small>{exercise.implement.name}</small>
      </h3>
      {exercise.locked && <p class="locked">Not to be done: {exercise.locked}</p>}
      <Before exercise={exercise} signs={exercise.occlusion ? signs : []} />
      {ramp.length > 0 && <p>Warm up: {ramp.join("; ")}.</p>}
      <Sets exercise={exercise} />
      {exercise.occlusion && (
        <p>
          On at <span class="line" /> Off at <span class="line" />
        </p>
      )}
    </section>
  );
}

function Before({ exercise, signs }: Pick<PaperExerciseProps, "exercise" | "signs">) {
  const { rig = [], notes = [], loading, stripping, implement } = exercise;
  const cautions = [...(exercise.cautions ?? []), ...signs];
  const rest = exercise.rest ? `${capital(restInWords(exercise.rest))}.` : "";
  const lines = [rest, exercise.cue ?? "", ...rig, ...notes, ...wearInWords(exercise)];
  return (
    <>
      {lines.filter(Boolean).map((line) => (
        <p key={line}>{line}</p>
      ))}
      {loading && (
        <p>
          Load in this order: {orderInWords(loading, implement)} ({marginInWords(loading)}).{" "}
          {loading.advice}
        </p>
      )}
      {stripping && (
        <p>
          Strip in this order: {orderInWords(stripping, implement)} ({marginInWords(stripping)}).
        </p>
      )}
      {cautions.map((caution) => (
        <p key={caution} class="caution">
          <b>Caution:</b> {caution}
        </p>
      ))}
    </>
  );
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

function Sets({ exercise }: { readonly exercise: SheetExercise }) {
  const boxes = boxesOf(exercise);
  return (
    <table class="paper-sets">
      <caption class="sr-only">Sets of {exercise.name}</caption>
      <thead>
        <tr>
          {["Set", "Asked", "Load", "Loaded with"].map((head) => (
            <th key={head} scope="col">
              {head}
            </th>
          ))}
          {boxes.map((box) => (
            <th key={box} scope="col" class="box">
              {box}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {exercise.sets.map((set) => {
          const { load, made } = paperLoad(exercise, set);
          return (
            <tr key={set.key} data-set={set.key}>
              <th scope="row">{set.number}</th>
              <td>{askedInWords(set.target, exercise.method)}</td>
              <td class="load">{load}</td>
              <td>{made}</td>
              {boxes.map((box) => (
                <td key={box} class="box">
                  <span class="sr-only">to be written by hand</span>
                </td>
              ))}
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}
