import type { Attention, SquadLine } from "../answers";
import { ColumnHeads } from "../shell/column-heads";
import { counted } from "../shell/counted";
import { useDesk } from "../shell/desk-state";
import { Link } from "../shell/link";
import { athletePath, blockPath } from "../shell/route";
import { dueOn } from "../shell/when";
import { StageMarks } from "./stage-marks";
import { heard } from "./standing";

export function SquadTable({ athletes }: { readonly athletes: readonly SquadLine[] }) {
  const now = useDesk().now();
  return (
    <table class="ruled squad">
      <caption class="sr-only">Athletes, those who need attention first</caption>
      <ColumnHeads names={["Athlete", "Needs", "Phone", "Block and how far it has come", "Next"]} />
      <tbody>
        {athletes.map((line) => (
          <Row key={line.id} line={line} now={now} />
        ))}
      </tbody>
    </table>
  );
}

function Row({ line, now }: { readonly line: SquadLine; readonly now: number }) {
  const silence = heard(line, now);
  return (
    <tr>
      <th scope="row">
        <Link to={athletePath(line.id)}>{line.name}</Link>
        {line.right !== "own" && (
          <small class="whose">
            {line.owner}’s{line.right === "read" && ", to read"}
          </small>
        )}
      </th>
      <td data-head="Needs">
        <Needs line={line} />
      </td>
      <td data-head="Phone" class={silence.quiet ? undefined : "soft"}>
        {silence.text}
      </td>
      <td data-head="Block">
        {line.block ? (
          <>
            {line.block.mine ? (
              <Link to={blockPath(line.block.id)}>{line.block.name}</Link>
            ) : (
              line.block.name
            )}{" "}
            {line.revision !== null && <small>revision {line.revision}</small>}
            <StageMarks states={line.states} now={now} />
          </>
        ) : (
          <span class="soft">nothing sent</span>
        )}
      </td>
      <td data-head="Next">
        {line.next ? (
          <>
            <span class="soft">{dueOn(line.next.on, now)}</span> {line.next.name}{" "}
            <small>{line.next.week_name}</small>
          </>
        ) : (
          <span class="soft">—</span>
        )}
      </td>
    </tr>
  );
}

const LEVELS: Readonly<Record<Attention["level"], string>> = {
  now: "now",
  soon: "soon",
  note: "",
};

function Needs({ line }: { readonly line: SquadLine }) {
  if (line.attention.length === 0 && line.unplaced === 0) return <span class="soft">nothing</span>;
  return (
    <ul class="needs">
      {line.attention.map((each) => (
        <li key={each.text} class={each.level}>
          {LEVELS[each.level] && <b>{LEVELS[each.level]}</b>} {each.text}
        </li>
      ))}
      {line.unplaced > 0 && (
        <li>
          <Link to={athletePath(line.id, "held")}>
            Read {counted(line.unplaced, "held entry", "held entries")}
          </Link>
        </li>
      )}
    </ul>
  );
}
