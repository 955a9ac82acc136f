import type { SheetExercise } from "../../api/types";
import { newsOf, usePhoneState } from "../hooks";
import { useMore } from "../later";

/** Where the coach has shown how the exercise is done. */
export function Looks({ exercise: { exercise, name } }: { readonly exercise: SheetExercise }) {
  const picture = newsOf(usePhoneState(), "pictures").at(-1)?.[exercise];
  const { more } = useMore(picture !== undefined);
  return picture && more ? <more.HowItLooks name={name} picture={picture} /> : null;
}
