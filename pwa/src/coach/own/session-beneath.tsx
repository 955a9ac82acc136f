import type { SessionPlan } from "../../api/types";
import { withSession, type SessionAt } from "../block/places";
import { setDay } from "../block/weeks";
import { useDesk } from "../shell/desk-state";
import { dayName } from "../shell/when";
import { useBeneath, useWriter } from "../writer/writer-state";
import { leftOut, putBack, sessionBeneath, setsInWords } from "./beneath";
import { OwnMark } from "./own-mark";

interface SessionBeneathProps {
  readonly session: SessionPlan;
  readonly at: SessionAt;
}

/** What the block says of the session itself, where one athlete has it otherwise. */
export function SessionBeneath({ session, at }: SessionBeneathProps) {
  const writer = useWriter();
  const beneath = useBeneath();
  const base = beneath && sessionBeneath(beneath.block, session.key);
  if (!base) return null;
  const says = [
    base.name === session.name ? "" : `“${base.name}”`,
    base.day === session.day ? "" : dayName(base.day),
    (base.note ?? "") === (session.note ?? "") ? "" : base.note ? `“${base.note}”` : "no note",
  ].filter(Boolean);
  if (says.length === 0) return null;
  const { name, day, note } = base;
  const back = () =>
    writer.edit((block) =>
      setDay(
        withSession(block, at, (each) => ({ ...each, name, note })),
        at,
        day,
      ),
    );
  return (
    <OwnMark of={session.name} back={back}>
      The block: {says.join(" · ")}.
    </OwnMark>
  );
}

/** Exercises of the block that one athlete leaves out of this session. */
export function ExercisesLeftOut({ session, at }: SessionBeneathProps) {
  const writer = useWriter();
  const beneath = useBeneath();
  const exercises = useDesk().exercises.value;
  const base = beneath && sessionBeneath(beneath.block, session.key);
  if (!base) return null;
  const back = (key: string) =>
    writer.edit((block) =>
      withSession(block, at, (each) => ({
        ...each,
        exercises: putBack(each.exercises, base.exercises, key),
      })),
    );
  return (
    <>
      {leftOut(session.exercises, base.exercises).map(({ key, exercise, sets }) => {
        const name = exercises.find((each) => each.key === exercise)?.name ?? exercise;
        return (
          <OwnMark key={key} of={name} back={() => back(key)}>
            Left out: {name}, {setsInWords(sets)}.
          </OwnMark>
        );
      })}
    </>
  );
}
