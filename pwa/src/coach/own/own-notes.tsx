import { useRemarks } from "../writer/writer-state";
import { OwnMark } from "./own-mark";

interface OwnNotesProps {
  readonly session: string;
  /** "" for the session itself. */
  readonly exercise: string;
}

/** Beside the block's text: what the athlete whose loads are shown does otherwise here. */
export function OwnNotes({ session, exercise }: OwnNotesProps) {
  const { own, athlete } = useRemarks();
  const here = own.filter((each) => each.session === session && each.exercise === exercise);
  if (!athlete) return null;
  return (
    <>
      {here.map(({ what, beneath }) => (
        <OwnMark key={what} of={what}>
          {athlete.name}: {what}
          {beneath && `; ${beneath}`}.
        </OwnMark>
      ))}
    </>
  );
}
