/** Everything that an athlete may have to know of the exchange and the storage, worst first. */
import { type PhoneState } from "../../offline/phone";
import { count } from "../words/sets";
import { clockTime, moment } from "../words/times";
import { clockInWords, isOverdue, sinceOf, unsentInWords, unsentOf } from "./sync-words";

export interface Fact {
  readonly is:
    | "full"
    | "silent storage"
    | "erased"
    | "revoked"
    | "log-in expired"
    | "three days"
    | "sending"
    | "offline"
    | "busy"
    | "not taken"
    | "clock"
    | "not persisted"
    | "update waiting"
    | "update ready";
  /** A hint asks for nothing today; a notice does. */
  readonly weight: "notice" | "hint";
  readonly what: string;
  readonly todo: string;
}

/** What the state of the phone itself does not say. */
export interface Around {
  readonly now: number;
  readonly update: boolean;
  readonly underWay: boolean;
}

export function factsOf(state: PhoneState, around: Around): Fact[] {
  return [
    storage(state),
    pairing(state),
    overdue(state, around.now),
    exchange(state, around.now),
    clock(state),
    persistence(state),
    update(around),
  ].filter((fact) => fact !== null);
}

function storage({ fault, unsaved }: PhoneState): Fact | null {
  const failed = unsaved.filter((each) => each.failed).length;
  if (failed === 0 && !fault) return null;
  const open =
    failed === 0
      ? ""
      : ` Keep this page open: ${count(failed, "entry is", "entries are")} here only.`;
  if (fault?.full) {
    const todo = `Delete photos or apps that you do not need, then try again.${open}`;
    return { is: "full", weight: "notice", what: "This phone's storage is full.", todo };
  }
  const what = "This phone's storage does not answer.";
  const todo = `Close other tabs of the app, then try again.${open}`;
  return { is: "silent storage", weight: "notice", what, todo };
}

function pairing({ identity }: PhoneState): Fact | null {
  if (!identity?.refused) return null;
  const { coach } = identity;
  if (identity.erased) {
    const todo = `What this phone holds stays until you unpair it: read it, record on, or save what is unsent as a file. To train with a coach again, pair with a new link or code.`;
    const what = `${coach} has erased what the server had of you.`;
    return { is: "erased", weight: "notice", what, todo };
  }
  if (identity.revoked) {
    const todo = `Record as before: all is kept, and what is sent waits for ${coach} to accept it. To get new sessions, pair again with a link or a code from ${coach}.`;
    return { is: "revoked", weight: "notice", what: `${coach} has unpaired this phone.`, todo };
  }
  const what = "The server does not know this phone any more: its log-in has run out.";
  const todo = `All is kept here. Pair again with a link or a code from ${coach}; then it is sent.`;
  return { is: "log-in expired", weight: "notice", what, todo };
}

function overdue(state: PhoneState, now: number): Fact | null {
  const unsent = unsentOf(state);
  if (!isOverdue(unsent, now)) return null;
  const what = `${unsentInWords(unsent)} unsent since ${moment(sinceOf(unsent), now)}.`;
  const todo = "Find a network, or hand them to your coach by the file below.";
  return { is: "three days", weight: "notice", what, todo };
}

function exchange(state: PhoneState, now: number): Fact | null {
  const { running, last, nextAt } = state.sync;
  const unsent = unsentOf(state);
  const what = unsent.length === 0 ? "" : unsentInWords(unsent);
  if (running) {
    const todo = "Keep the app open for a moment.";
    return what ? { is: "sending", weight: "hint", what: `Sending ${what}.`, todo } : null;
  }
  const again = nextAt ? ` It is tried again at ${clockTime(nextAt)}.` : "";
  if (last?.is === "busy") {
    const todo = `Nothing to do.${again}`;
    return { is: "busy", weight: "hint", what: "The server asks for patience.", todo };
  }
  if (last?.is !== "failed" || last.why === "storage") return null;
  if (last.why === "not taken") {
    const told = "The server could not take everything.";
    return { is: "not taken", weight: "notice", what: told, todo: `Nothing is lost.${again}` };
  }
  const since = what && ` ${what} on this phone only since ${moment(sinceOf(unsent), now)}.`;
  const todo = `All works without a network, and is sent by itself once there is one.${again}`;
  return { is: "offline", weight: "hint", what: `No answer from the server.${since}`, todo };
}

function clock(state: PhoneState): Fact | null {
  const what = clockInWords(state);
  if (!what) return null;
  const todo = "What you record keeps its order all the same.";
  return { is: "clock", weight: "notice", what, todo };
}

function persistence({ notes }: PhoneState): Fact | null {
  if (notes.persisted !== false) return null;
  const what = "This browser may clear what is recorded here when space is short.";
  const todo = "Put the app on your home screen, and open it from there.";
  return { is: "not persisted", weight: "hint", what, todo };
}

function update({ update: waits, underWay }: Around): Fact | null {
  if (!waits) return null;
  if (underWay) {
    const todo = "It waits until this session is over.";
    return { is: "update waiting", weight: "hint", what: "A newer version is here.", todo };
  }
  const todo = "It takes a second; nothing is lost.";
  return { is: "update ready", weight: "hint", what: "A newer version is ready.", todo };
}
