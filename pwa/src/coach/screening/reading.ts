/** What a coach has to have read before a signature means anything. */
import type { Answered, ScreeningPage, ScreeningReply } from "../answers";
import { counted } from "../shell/counted";
import { leadsTo } from "./outcomes";

/** The tick for all answers that lead nowhere; no question has such a key. */
export const THE_REST = " rest";

interface Sorted {
  /** Answers that lead somewhere. */
  readonly marked: readonly ScreeningReply[];
  readonly rest: readonly ScreeningReply[];
}

export function sorted(answered: Pick<Answered, "answers">): Sorted {
  const leads = (reply: ScreeningReply) => leadsTo(reply.outcome) !== null;
  return {
    marked: answered.answers.filter(leads),
    rest: answered.answers.filter((reply) => !leads(reply)),
  };
}

/** Every tick that is asked for: one for each marked answer, one for all others together. */
export function ticksNeeded({ marked, rest }: Sorted): string[] {
  const others = rest.length > 0 ? [THE_REST] : [];
  return [...marked.map((reply) => reply.key), ...others];
}

/** A counted caution asks for a note, unless a clinician's clearance covers it. */
export function needsNote({ reasons }: Pick<ScreeningPage, "reasons">): boolean {
  return reasons.some(
    ({ key, outcome, covered }) => outcome === "needs-reading" && key !== UNREAD && !covered,
  );
}

/** The server's key for "the coach has not read the screening". */
const UNREAD = "unread";

/** Must the latest answers be signed, or signed again with a note? */
export function wantsSignature(page: Pick<ScreeningPage, "latest" | "signed" | "reasons">) {
  return page.latest !== null && (!page.signed || needsNote(page));
}

/** What is still missing for the signature, in words; empty where nothing is. */
export function stillMissing(
  needed: readonly string[],
  ticked: ReadonlySet<string>,
  note: { readonly needed: boolean; readonly text: string },
): string {
  const open = needed.filter((key) => !ticked.has(key)).length;
  const parts = [
    open > 0 ? `${counted(open, "tick")} above` : "",
    note.needed && note.text.trim() === "" ? "a note on the counted cautions" : "",
  ].filter(Boolean);
  return parts.length > 0 ? `Still missing: ${parts.join(", and ")}.` : "";
}
