import type { SheetExercise, SheetLoad, SheetSet } from "../../api/types";
import { useMore } from "../later";
import { toStrip } from "./strip";
import type { SessionView } from "./view";

export interface RiggingProps {
  readonly view: SessionView;
  readonly exercise: SheetExercise;
  /** Absent in the warm-up: its loads have no curve of their own. */
  readonly set?: SheetSet;
  readonly load: SheetLoad | null;
}

/** Force curve, rig and loading order, where the exercise has them. */
export function Rigging(props: RiggingProps) {
  const { rig = [], loading } = props.exercise;
  const wanted = Boolean(props.set?.curve ?? loading) || rig.length > 0;
  const { more, missing } = useMore(wanted);
  if (!wanted) return null;
  return missing ? <Missing /> : more && <more.RigParts {...props} />;
}

interface StripProps {
  readonly view: SessionView;
  readonly next: SheetExercise | null;
}

/** What has to come off a light bar in its order, before anything else is done. */
export function StripFirst({ view, next }: StripProps) {
  const exercise = toStrip(view, next);
  const { more, missing } = useMore(exercise !== null);
  if (!exercise) return null;
  return missing ? <Missing /> : more && <more.StripPart exercise={exercise} />;
}

/** Only on a first visit whose network broke off. */
function Missing() {
  return <p class="note">The rig and the loading order are not here yet: connect once.</p>;
}
