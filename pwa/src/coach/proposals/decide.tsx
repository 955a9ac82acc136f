import { useState } from "preact/hooks";

import type { Finding, Overrule, Proposals } from "../answers";
import { acceptProposals } from "../desk";
import { RefusalPart } from "../send/refusal-part";
import { overrulesFor, type Reasons } from "../send/stops";
import { counted } from "../shell/counted";
import { useMay } from "../shell/right";
import { Failure } from "../shell/states";
import { useAct } from "../shell/use-act";
import { acceptedOf, rowsOf } from "./rows";
import { SessionLoads } from "./session-loads";

interface DecideProps {
  readonly found: Proposals;
  readonly revision: number;
  readonly athlete: { readonly id: string; readonly name: string };
  readonly sent: (revision: number, loads: number) => void;
}

/** Every proposed load is ticked until the coach takes the tick away. */
export function Decide({ found, revision, athlete, sent }: DecideProps) {
  const act = useAct();
  const may = useMay("write");
  const [left, setLeft] = useState<ReadonlySet<string>>(new Set());
  const [stops, setStops] = useState<readonly Finding[]>([]);
  const [reasons, setReasons] = useState<Reasons>({});
  const loads = acceptedOf(found.sessions.flatMap(rowsOf), left);
  const refusal = { athlete: athlete.id, stops };
  const overrules = stops.length > 0 ? overrulesFor(refusal, reasons) : [];
  const tick = (key: string, on: boolean) => {
    const next = new Set(left);
    if (on) next.delete(key);
    else next.add(key);
    setLeft(next);
    setStops([]);
  };
  const go = (set: readonly Overrule[]) =>
    act.run(
      () => acceptProposals(athlete.id, revision, loads, set),
      (answer) => {
        setStops(answer.stops);
        if (answer.revision !== null) sent(answer.revision, loads.length);
      },
    );
  return (
    <>
      {found.sessions.map((session) => (
        <SessionLoads key={session.session} session={session} left={left} onTick={tick} />
      ))}
      {stops.length > 0 && (
        <>
          <p role="alert" class="refused-loads">
            Not sent: the checks found {counted(stops.length, "stop")}.
          </p>
          <RefusalPart
            refusal={refusal}
            name={athlete.name}
            reasons={reasons}
            onReason={(key, reason) => setReasons((before) => ({ ...before, [key]: reason }))}
          />
        </>
      )}
      <Failure fault={act.fault} />
      {found.waiting > 0 && may && (
        <div class="save-bar">
          <button
            type="button"
            class="main"
            disabled={act.busy || loads.length === 0 || overrules === null}
            onClick={() => go(overrules ?? [])}
          >
            {buttonWords(act.busy, loads.length, stops.length > 0)}
          </button>
        </div>
      )}
    </>
  );
}

function buttonWords(busy: boolean, loads: number, refused: boolean): string {
  if (busy) return "Sending …";
  if (loads === 0) return "Tick what you accept";
  const what = `these ${counted(loads, "load")}`;
  return refused ? `Send ${what} all the same` : `Accept ${what} and send`;
}
