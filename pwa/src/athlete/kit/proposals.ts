/** What this athlete proposed to change in the kit, and what the coach made of it. */
import type { KitChange, Of } from "../../offline/entry";
import { heads } from "../../offline/heads";
import type { PhoneState } from "../../offline/phone";
import { entriesOf } from "../tell/telling";
import type { Piece } from "./pieces";

export interface Proposal {
  readonly entry: Of<"kit.changed">;
  readonly change: KitChange;
  readonly state: "waits" | "accepted" | "declined";
}

/**
 * In the order in which they were made; without those that were taken back. Once the coach has agreed, the kit
 * is changed: what was taken back offline came too late, and stays for the athlete to say otherwise.
 */
export function proposalsOf(state: PhoneState): Proposal[] {
  const decided = new Map(
    state.feed
      .filter(({ kind }) => kind === "kit.decided")
      .map(({ key, body }) => [key, (body as { readonly accepted: boolean }).accepted]),
  );
  const tooLate = ({ body, replaces }: Of<"kit.changed">) =>
    body.change.kind === "withdrawn" && decided.get(replaces ?? "") === true;
  return heads(entriesOf(state, "kit.changed").filter((entry) => !tooLate(entry)))
    .filter(({ body }) => body.change.kind !== "withdrawn")
    .map((entry) => {
      const accepted = decided.get(entry.id);
      const told = accepted ? "accepted" : "declined";
      return { entry, change: entry.body.change, state: accepted === undefined ? "waits" : told };
    });
}

export function isOf({ change }: Proposal, { list, name }: Pick<Piece, "list" | "name">): boolean {
  if (change.kind === "gone" || change.kind === "back") {
    return change.list === list && change.name === name;
  }
  if (change.kind === "bar-weighed") return list === "bars" && change.key === name;
  return change.kind === "band-measured" && list === "bands" && change.key === name;
}

/** Single pieces that went with the coach's word and have not come back; `here` is what the kit has. */
export function goneOf(proposals: readonly Proposal[], here: readonly Piece[]): Proposal[] {
  return proposals.filter((proposal, at) => {
    const { change, state } = proposal;
    if (change.kind !== "gone" || change.row === undefined || state !== "accepted") return false;
    if (here.some((piece) => isOf(proposal, piece))) return false;
    const later = proposals.slice(at + 1).filter((one) => isOf(one, change));
    return !later.some((one) => one.state !== "declined");
  });
}

/** "2 gone", "here again", "weighs 19.6 kg", "measured with 4 readings" */
export function changeInWords(change: KitChange, kg: (value: number) => string): string {
  switch (change.kind) {
    case "gone":
      return change.count === undefined ? "gone" : `${change.count} gone`;
    case "back":
      return change.count === undefined ? "here again" : `${change.count} here again`;
    case "bar-weighed":
      return `weighs ${kg(Math.round((change.with_kg - change.without_kg) * 1000) / 1000)}`;
    case "band-measured":
      return `measured with ${change.readings.length} readings`;
    case "withdrawn":
      return "taken back";
  }
}
