import { useId } from "preact/hooks";

import type { SessionProposals } from "../answers";
import { counted } from "../shell/counted";
import { useDesk } from "../shell/desk-state";
import { dueOn } from "../shell/when";
import { figuresOf, rowsOf, type ProposalRow } from "./rows";

interface SessionLoadsProps {
  readonly session: SessionProposals;
  /** Keys of the rows whose tick was taken away. */
  readonly left: ReadonlySet<string>;
  readonly onTick: (key: string, on: boolean) => void;
}

/** A session's loads: to be decided, following by themselves, and folded those that stay. */
export function SessionLoads({ session, left, onTick }: SessionLoadsProps) {
  const rows = rowsOf(session);
  const now = useDesk().now();
  const of = (...kinds: readonly string[]) => rows.filter((row) => kinds.includes(row.first.kind));
  const [proposed, follows, others] = [of("proposed"), of("follows"), of("stays", "unknown")];
  return (
    <section class="next-session">
      <h3>
        {session.week_name}, {dueOn(session.on, now)}: {session.name}
      </h3>
      <ul class="next-loads">
        {proposed.map((row) => (
          <Proposed key={row.key} row={row} on={!left.has(row.key)} onTick={onTick} />
        ))}
        {follows.map((row) => (
          <Told key={row.key} row={row} />
        ))}
      </ul>
      {others.length > 0 && (
        <details>
          <summary>{counted(others.length, "load")} that nothing moves</summary>
          <ul class="next-loads">
            {others.map((row) => (
              <Told key={row.key} row={row} />
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}

interface ProposedProps {
  readonly row: ProposalRow;
  readonly on: boolean;
  readonly onTick: (key: string, on: boolean) => void;
}

function Proposed({ row, on, onTick }: ProposedProps) {
  const id = useId();
  return (
    <li class="proposed">
      <input
        id={id}
        type="checkbox"
        checked={on}
        aria-describedby={`${id}-why`}
        onChange={(event) => onTick(row.key, event.currentTarget.checked)}
      />
      <label for={id}>
        <span>
          <b>{row.exercise}</b>, {row.sets}
        </span>{" "}
        <span class="load">{figuresOf(row.first)}</span>
      </label>
      <p id={`${id}-why`}>{row.first.why}</p>
    </li>
  );
}

const WORDS = { follows: "already follows", stays: "stays", unknown: "cannot be told" } as const;

function Told({ row }: { readonly row: ProposalRow }) {
  const { kind, why } = row.first;
  return (
    <li>
      <div>
        <span>
          <b>{row.exercise}</b>, {row.sets}
        </span>{" "}
        <span class="load">{figuresOf(row.first)}</span>
      </div>
      <p>
        {kind !== "proposed" && `${WORDS[kind]}: `}
        {why}
      </p>
    </li>
  );
}
