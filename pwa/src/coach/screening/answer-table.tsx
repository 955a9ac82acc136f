import type { ScreeningReply } from "../answers";
import { OutcomeMark } from "./outcome-mark";
import { leadsTo } from "./outcomes";

interface AnswerTableProps {
  readonly caption: string;
  readonly replies: readonly ScreeningReply[];
  /** Do they lead somewhere? */
  readonly marked?: boolean;
  /** Where each line has to be ticked as read. */
  readonly ticks?: Ticks;
}

interface Ticks {
  readonly ticked: ReadonlySet<string>;
  readonly put: (key: string, on: boolean) => void;
}

/** Questions with their answers, and where each leads. */
export function AnswerTable({ caption, replies, marked = false, ticks }: AnswerTableProps) {
  if (replies.length === 0) return null;
  return (
    <table class={`ruled answers${marked ? "" : " brief"}`}>
      <caption>{caption}</caption>
      <thead>
        <tr>
          <th scope="col">Question</th>
          <th scope="col">Answer</th>
          {marked && <th scope="col">Leads to</th>}
          {ticks && <th scope="col">Read</th>}
        </tr>
      </thead>
      <tbody>
        {replies.map((reply) => (
          <tr key={reply.key}>
            <th scope="row">{reply.question}</th>
            <td data-head="Answer">{reply.answer}</td>
            {marked && (
              <td data-head="Leads to">
                <Leads outcome={reply.outcome} />
              </td>
            )}
            {ticks && (
              <td>
                <Tick reply={reply} ticks={ticks} />
              </td>
            )}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Leads({ outcome }: { readonly outcome: string }) {
  const known = leadsTo(outcome);
  return known ? <OutcomeMark outcome={known} /> : null;
}

interface TickProps {
  readonly reply: ScreeningReply;
  readonly ticks: Ticks;
}

function Tick({ reply, ticks }: TickProps) {
  return (
    <label class="truth tick">
      <input
        type="checkbox"
        checked={ticks.ticked.has(reply.key)}
        onChange={(event) => ticks.put(reply.key, event.currentTarget.checked)}
      />
      read<span class="sr-only">: {reply.question}</span>
    </label>
  );
}
