import type { HeldEntry } from "../answers";
import { acceptHeld, held } from "../desk";
import { useDesk } from "../shell/desk-state";
import { May } from "../shell/right";
import { Failure, Loaded } from "../shell/states";
import { useAct } from "../shell/use-act";
import { useLoad } from "../shell/use-load";
import { dayAndClock } from "../shell/when";

/** Entries that the server keeps but could not place: a person says what counts. */
export function HeldPart({ id }: { readonly id: string }) {
  const load = useLoad(`held ${id}`, () => held(id));
  return (
    <section>
      <h2>Held entries</h2>
      <p class="aside-note">
        What a phone recorded and the server could not place. Nothing is dropped: an entry stays
        here until you let it count.
      </p>
      <Loaded load={load} what="held entries">
        {(entries) =>
          entries.length === 0 ? (
            <p class="lead">Nothing is held.</p>
          ) : (
            <>
              <May needs="write">
                <AllAtOnce athlete={id} entries={entries} again={load.again} />
              </May>
              <ul class="held">
                {entries.map((entry) => (
                  <Held key={entry.position} athlete={id} entry={entry} again={load.again} />
                ))}
              </ul>
            </>
          )
        }
      </Loaded>
    </section>
  );
}

interface AllAtOnceProps {
  readonly athlete: string;
  readonly entries: readonly HeldEntry[];
  readonly again: () => void;
}

/** Held for their phone alone: one decision may do for all of them. */
const FOR_THEIR_PHONE: ReadonlySet<string> = new Set(["revoked-device", "unknown-device"]);

function AllAtOnce({ athlete, entries, again }: AllAtOnceProps) {
  const act = useAct();
  const sound = entries.filter(({ problem }) => FOR_THEIR_PHONE.has(problem.code));
  if (sound.length < 2) return null;
  const acceptAll = async () => {
    try {
      for (const { position } of sound) await acceptHeld(athlete, position);
    } finally {
      again();
    }
  };
  return (
    <>
      <p>
        {sound.length} of them are held only because their phone is revoked or was never paired
        here.
      </p>
      <Failure fault={act.fault} />
      <button type="button" disabled={act.busy} onClick={() => act.run(acceptAll, () => undefined)}>
        {act.busy ? "Letting them count …" : `Let all ${sound.length} count`}
      </button>
    </>
  );
}

interface HeldProps {
  readonly athlete: string;
  readonly entry: HeldEntry;
  readonly again: () => void;
}

function Held({ athlete, entry, again }: HeldProps) {
  const act = useAct();
  const now = useDesk().now();
  const { what, right } = entry.problem;
  const name = `${kindOf(entry.sent)}, received ${dayAndClock(entry.received_at, now)}`;
  return (
    <li>
      <h3>{name}</h3>
      <p>
        {what}
        {right && <span class="soft">; {right}</span>}
      </p>
      <details>
        <summary>What it says</summary>
        <pre>{JSON.stringify(entry.sent, null, 2)}</pre>
      </details>
      <Failure fault={act.fault} />
      <May needs="write">
        <button
          type="button"
          disabled={act.busy}
          onClick={() => act.run(() => acceptHeld(athlete, entry.position), again)}
        >
          Let it count<span class="sr-only">: {name}</span>
        </button>
      </May>
    </li>
  );
}

const KINDS: Readonly<Record<string, string>> = {
  "set.done": "A set done",
  "set.skipped": "A set skipped",
  "set.cleared": "A set taken back",
  "set.added": "A set added",
  "session.opened": "A session looked at",
  "session.started": "A session begun",
  "session.finished": "A session finished",
  "session.stopped": "A session stopped",
  "exercise.swapped": "An exercise swapped",
  "pain.reported": "Pain reported",
  "kit.changed": "A change of the kit",
  message: "A message",
};

function kindOf(sent: unknown): string {
  const kind = sent && typeof sent === "object" && "kind" in sent ? String(sent.kind) : "";
  return KINDS[kind] ?? (kind ? `An entry of kind ${kind}` : "An entry");
}
