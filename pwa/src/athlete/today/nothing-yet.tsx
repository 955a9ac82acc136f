import type { PhoneState } from "../../offline/phone";
import { useApp } from "../app-context";

interface Props {
  readonly state: PhoneState;
  /** A block has come, and all of its sessions are done. */
  readonly planned: boolean;
}

/** Nothing to train: because nothing came, nothing could come, or all is done. */
export function NothingYet({ state, planned }: Props) {
  const { phone } = useApp();
  const { identity, sync } = state;
  const coach = identity?.coach ?? "your coach";
  if (planned) {
    return (
      <section class="card empty">
        <h2>All sessions done</h2>
        <p>{coach} sees them and sends what comes next.</p>
      </section>
    );
  }
  const waiting = identity?.snapshotDue ?? false;
  return (
    <section class="card empty">
      <h2>{waiting ? "Your program is on its way" : "No program yet"}</h2>
      <p>{reason(waiting, sync.running, coach)}</p>
      <button
        type="button"
        class="button"
        disabled={sync.running}
        onClick={() => phone.poke("asked")}
      >
        {sync.running ? "Asking the server" : "Ask again"}
      </button>
    </section>
  );
}

function reason(waiting: boolean, running: boolean, coach: string): string {
  if (waiting && running) return "This takes a moment, and only this once.";
  if (waiting)
    return "The server has not answered yet. It is asked again as soon as there is a network.";
  return `As soon as ${coach} sends a block, it is here, also without a network.`;
}
