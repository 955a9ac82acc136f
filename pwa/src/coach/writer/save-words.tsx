import { useDesk } from "../shell/desk-state";
import { dayAndClock } from "../shell/when";
import type { Saver, Saving } from "./saver";

/** Where the text is safe, in words. */
export function SaveWords({ saver }: { readonly saver: Saver }) {
  const now = useDesk().now();
  const saving = saver.saving.value;
  const pressing = saving.kind === "unreached" || saving.kind === "refused";
  return (
    <span class={`save-words ${saving.kind === "not kept" ? "bad" : ""}`}>
      <span role="status">{words(saving, now)}</span>{" "}
      {pressing && (
        <button type="button" class="plain" onClick={saver.saveNow}>
          Try now
        </button>
      )}
    </span>
  );
}

function words(saving: Saving, now: number): string {
  switch (saving.kind) {
    case "saved":
      return saving.at === null ? "" : `On the server, ${dayAndClock(saving.at, now)}.`;
    case "kept":
      return "Kept in this browser.";
    case "saving":
      return "Kept in this browser, going to the server …";
    case "unreached":
      return "Kept in this browser; the server does not answer yet.";
    case "refused":
      return `Kept in this browser; the server says: ${saving.why}`;
    case "not kept":
      return "This browser has no room for the draft. Stay until it is on the server.";
  }
}
