/** Brings the pictures of coming sessions once everything recorded here has been sent. */
import { effect } from "@preact/signals";

import type { PictureNews } from "../../api/sync";
import { underWay } from "../../offline/ledger-view";
import { bringPictures } from "../../offline/pictures";
import type { App } from "../app-context";
import { newsOf } from "../hooks";
import { planOf } from "../today/plan";
import { pictureParts } from "./parts";

/** Sessions ahead whose pictures are kept: two weeks of four (our own choice). */
const AHEAD = 8;

export function keepPictures(app: App): () => void {
  let running = false;
  let full = false;
  let tried: { readonly after: unknown; readonly what: string } | null = null;
  return effect(() => {
    const { last: after } = app.state.value.sync;
    if (running || full || !isIdle(app)) return;
    const pictures = wanted(app);
    const what = pictures.map(({ hash }) => hash).join();
    // Once for each exchange: what did not come is asked for again after the next one.
    if (tried?.after === after && tried.what === what) return;
    tried = { after, what };
    running = true;
    void bringPictures(pictureParts(), pictures, known(app), () => isIdle(app))
      .then((brought) => (full = brought === "full"))
      .catch(() => undefined)
      .finally(() => (running = false));
  });
}

/** The last exchange went well, and left nothing to be sent. */
function isIdle({ state }: App): boolean {
  const { sync, entries, unsaved } = state.value;
  const sent = unsaved.length === 0 && !entries.some(({ outbox }) => outbox);
  return sent && !sync.running && sync.last?.is === "done";
}

function known({ state }: App): PictureNews[] {
  return Object.values(newsOf(state.value, "pictures").at(-1) ?? {});
}

/** The session under way first, then those ahead in their order. */
function wanted({ state, sessions, clock }: App): PictureNews[] {
  const pictures = newsOf(state.value, "pictures").at(-1) ?? {};
  const now = underWay(sessions.value);
  const { open } = planOf(state.value, now?.record ?? null, clock.now());
  const sheets = [...(now ? [now.sheet] : []), ...open.slice(0, AHEAD)];
  const keys = new Set(sheets.flatMap((sheet) => sheet.exercises.map(({ exercise }) => exercise)));
  return [...keys].flatMap((key) => pictures[key] ?? []);
}
