/** That the athlete has had a session in front of them, told once for each sending of it. */
import type { LoadSheet } from "../../api/types";
import { draft } from "../../offline/entry";
import { placed, revisionOf } from "../../offline/ledger-view";
import type { App } from "../app-context";

/** Resolves once it is durable; to false where there was nothing to tell. */
export async function tellOpened({ phone, clock }: App, sheet: LoadSheet): Promise<boolean> {
  const place = { revision: revisionOf(sheet), session: sheet.session };
  const told = placed(phone.state()).some(
    ({ entry }) =>
      entry.kind === "session.opened" &&
      entry.session === place.session &&
      entry.revision === place.revision,
  );
  if (told || document.visibilityState !== "visible") return false;
  const now = clock.now();
  return phone.record(draft(phone.newId(), now, "session.opened", {}, place));
}
