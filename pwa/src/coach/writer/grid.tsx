import { useRef } from "preact/hooks";

import { addSession, addWeek, freeDay } from "../block/weeks";
import { pathOf, type SessionAt } from "../block/places";
import { own, within } from "../block/faults";
import { FindingMarks } from "../findings/finding-list";
import type { SessionPlan, Week } from "../../api/types";
import { counted } from "../shell/counted";
import { dayName, dayShort } from "../shell/when";
import { neighbour } from "./grid-keys";
import { useKeys } from "./use-keys";
import { useIsOwn } from "../own/use-is-own";
import { useBeneath, useRemarks, useWriter } from "./writer-state";

/** Weeks by sessions: the table of contents of a block, and the way around in it. */
export function Grid() {
  const writer = useWriter();
  const { weeks } = writer.block.value;
  const most = Math.max(1, ...weeks.map((week) => week.sessions.length));
  const add = () => {
    writer.edit((block) => addWeek(block, writer.random));
    writer.place.value = { week: weeks.length, session: null };
  };
  const fixed = useBeneath() !== null;
  const table = useRef<HTMLTableElement>(null);
  const frame = useKeys((event) => {
    const next = neighbour(table.current, event.key);
    return next && (() => next.focus());
  });
  return (
    <div class="grid-frame" ref={frame}>
      <table class="grid" ref={table}>
        <caption class="sr-only">Weeks and their sessions</caption>
        <tbody>
          {weeks.map((week, place) => (
            <WeekRow key={week.key} week={week} place={place} most={most} fixed={fixed} />
          ))}
        </tbody>
      </table>
      {!fixed && (
        <button type="button" class="plain" onClick={add}>
          + week
        </button>
      )}
    </div>
  );
}

interface WeekRowProps {
  readonly week: Week;
  readonly place: number;
  readonly most: number;
  /** Weeks and sessions are those of the block beneath. */
  readonly fixed: boolean;
}

function WeekRow({ week, place, most, fixed }: WeekRowProps) {
  const writer = useWriter();
  const { findings } = useRemarks();
  const { week: chosen, session } = writer.place.value;
  const add = () => {
    const day = freeDay(week);
    writer.edit((block) => addSession(block, place, day, writer.random));
    const after = writer.block.peek().weeks[place]?.sessions ?? [];
    const added = after.findIndex((each) => !week.sessions.some(({ key }) => key === each.key));
    writer.place.value = { week: place, session: added };
  };
  return (
    <tr class={chosen === place ? "chosen" : undefined}>
      <th scope="row">
        <button
          type="button"
          {...chosenProps(chosen === place && session === null)}
          onClick={() => (writer.place.value = { week: place, session: null })}
        >
          {week.name || `Week ${place + 1}`}
          <FindingMarks findings={own(findings, `weeks.${place}`, "sessions")} />
        </button>
      </th>
      {week.sessions.map((each, at) => (
        <td key={each.key}>
          <SessionCell session={each} at={{ week: place, session: at }} />
        </td>
      ))}
      <td colSpan={most - week.sessions.length + 1}>
        {!fixed && (
          <button type="button" class="plain" tabIndex={-1} onClick={add}>
            + session<span class="sr-only"> in {week.name}</span>
          </button>
        )}
      </td>
    </tr>
  );
}

/** Only the chosen cell is a stop for the tab key; the arrow keys lead to the others. */
function chosenProps(chosen: boolean) {
  return chosen ? ({ "aria-current": "true", tabIndex: 0 } as const) : { tabIndex: -1 };
}

function SessionCell({ session, at }: { readonly session: SessionPlan; readonly at: SessionAt }) {
  const writer = useWriter();
  const remarks = useRemarks();
  const faults = within(remarks.faults, pathOf(at)).length;
  const isOwn = useIsOwn(session);
  const { week, session: place } = writer.place.value;
  const current = week === at.week && place === at.session;
  return (
    <button type="button" {...chosenProps(current)} onClick={() => (writer.place.value = at)}>
      <span class="grid-day" aria-hidden="true">
        {dayShort(session.day)}
      </span>
      <span class="sr-only">{dayName(session.day)}: </span>
      {session.name || "no name"}
      {isOwn && <span class="grid-own"> own</span>}
      {faults > 0 && <span class="count-fault"> {counted(faults, "fault")}</span>}
      <FindingMarks findings={within(remarks.findings, pathOf(at))} />
    </button>
  );
}
