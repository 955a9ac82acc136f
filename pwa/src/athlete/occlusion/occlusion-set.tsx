import type { SheetExercise } from "../../api/types";
import type { Side } from "../../offline/entry";
import { steadyOf } from "../../offline/ledger-view";
import { openSets, sideOf, sidesOpen } from "../../offline/occlusion/bouts";
import { refusals } from "../../offline/occlusion/lock";
import { lastOff, numbness, openWraps, type Wrap } from "../../offline/occlusion/wear";
import { useApp } from "../app-context";
import { useSeconds } from "../device/now";
import type { SessionView } from "../session/view";
import { isoDay } from "../words/times";
import { Clearing } from "./clearing";
import { type OcclusionKnown, useKnown } from "./known";
import { Refused } from "./refused";
import { TodayQuestions } from "./today-questions";
import { WornSet } from "./worn-set";
import { WrapOn } from "./wrap-on";

export interface BoutProps {
  readonly view: SessionView;
  readonly exercise: SheetExercise;
}

/** An occlusion exercise from its lock to its last set; the wrap decides which limb is at hand. */
export function OcclusionSet(props: BoutProps) {
  const known = useKnown();
  if (known) return <Bout {...props} known={known} />;
  const why = "Your coach has not asked for a screening, so this cannot be done yet.";
  return <Refused {...props} found={[{ rule: "locked", why, opens: "A word with your coach." }]} />;
}

function Bout({ view, exercise, known }: BoutProps & { readonly known: OcclusionKnown }) {
  const { clock } = useApp();
  const { entries, questions } = known;
  const wrap = openWraps(entries).find(({ set }) => exercise.sets.some(({ key }) => key === set));
  const off = lastOff(entries);
  const steady = useSeconds(wrap ? null : off ? steadyOf(off) : 0);
  const now = clock.now();
  const today = isoDay(now);
  if (wrap) return <WithWrap view={view} exercise={exercise} wrap={wrap} known={known} />;
  const numb = numbness(entries, today, questions.numb);
  if (numb === "clearing") return <Clearing known={known} now={steady} />;
  const { session } = view.session.sheet;
  const found = refusals({ ...known, exercise, session, now, steady, today });
  const [first] = found;
  if (first?.rule === "today") return <TodayQuestions questions={questions} exercise={exercise} />;
  if (first)
    return <Refused view={view} exercise={exercise} found={found} now={now} known={known} />;
  const sides = sidesOpen(exercise, view.session.record.sets);
  return (
    <WrapOn
      key={sides.join()}
      view={view}
      exercise={exercise}
      sides={sides}
      known={known}
      looser={numb === "once"}
    />
  );
}

interface WithWrapProps extends BoutProps {
  readonly wrap: Wrap;
  readonly known: OcclusionKnown;
}

/** The next set of the limb that the wrap is on; after the last one the layer takes over. */
function WithWrap({ view, exercise, wrap, known }: WithWrapProps) {
  const side: Side | null = sideOf(wrap.limb);
  const [set] = openSets(exercise, view.session.record.sets, side);
  if (!set) return null;
  const key = `${set.key} ${side}`;
  return <WornSet key={key} view={view} exercise={exercise} set={set} side={side} known={known} />;
}
