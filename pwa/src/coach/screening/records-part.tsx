import type { ScreeningRecord } from "../answers";
import { withdrawRecord } from "../desk";
import { May } from "../shell/right";
import { Failure } from "../shell/states";
import { useAct } from "../shell/use-act";
import { date } from "../shell/when";
import { recordInWords, type RecordWords } from "./record-words";
import type { PieceProps } from "./screening-part";

/** Everything recorded, newest first; what was withdrawn stays in sight and counts no more. */
export function RecordsPart({ athlete, page, onPage }: PieceProps) {
  const act = useAct();
  const withdraw = (record: ScreeningRecord, { title, closes }: RecordWords) => {
    if (!window.confirm(`${title}. ${closes} Withdraw it?`)) return;
    act.run(() => withdrawRecord(athlete.id, record.number), onPage);
  };
  if (page.records.length === 0) return null;
  return (
    <section>
      <h2>On record</h2>
      <Failure fault={act.fault} />
      <ul class="plain-list records">
        {page.records.map((record) => (
          <Kept
            key={record.number}
            record={record}
            words={recordInWords(record, page.reasons)}
            busy={act.busy}
            withdraw={withdraw}
          />
        ))}
      </ul>
    </section>
  );
}

interface KeptProps {
  readonly record: ScreeningRecord;
  readonly words: RecordWords;
  readonly busy: boolean;
  readonly withdraw: (record: ScreeningRecord, words: RecordWords) => void;
}

function Kept({ record, words, busy, withdraw }: KeptProps) {
  const gone = record.withdrawn_at;
  return (
    <li class={gone === null ? undefined : "soft"}>
      <div>
        <b>{words.title}</b>
        {words.lines.map((line) => (
          <div key={line}>{line}</div>
        ))}
      </div>
      {gone === null ? (
        <May needs="own">
          <button
            type="button"
            class="plain"
            disabled={busy}
            onClick={() => withdraw(record, words)}
          >
            Withdraw<span class="sr-only">: {words.title}</span>
          </button>
        </May>
      ) : (
        <span>withdrawn {date(gone)}</span>
      )}
    </li>
  );
}
