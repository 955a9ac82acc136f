import { withWeek } from "../block/places";
import { dayName } from "../shell/when";
import { useBeneath, useWriter } from "../writer/writer-state";
import { leftOut, putBack, weekBeneath } from "./beneath";
import { OwnMark } from "./own-mark";

/** Sessions of the chosen week that one athlete leaves out. */
export function SessionsLeftOut() {
  const writer = useWriter();
  const beneath = useBeneath();
  const { week: at } = writer.place.value;
  const week = writer.block.value.weeks[at];
  const base = beneath && weekBeneath(beneath.block, week);
  if (!base || !week) return null;
  const back = (key: string) =>
    writer.edit((block) =>
      withWeek(block, at, (each) => ({
        ...each,
        sessions: putBack(each.sessions, base.sessions, key),
      })),
    );
  return (
    <>
      {leftOut(week.sessions, base.sessions).map(({ key, name, day }) => (
        <OwnMark key={key} of={name} back={() => back(key)}>
          Left out: {name}, {dayName(day)}.
        </OwnMark>
      ))}
    </>
  );
}
