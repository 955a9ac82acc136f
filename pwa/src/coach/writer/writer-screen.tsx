import { useEffect, useMemo, useReducer, useRef } from "preact/hooks";

import type { BlockAnswer } from "../answers";
import { draftOf, dropDraft, isOnlyHere, opening, type Draft, type Opening } from "../block/drafts";
import { block } from "../desk";
import { useDesk } from "../shell/desk-state";
import { Link } from "../shell/link";
import { Page } from "../shell/page";
import { BLOCKS } from "../shell/route";
import { Failure } from "../shell/states";
import { useLoad, type Loaded } from "../shell/use-load";
import { date } from "../shell/when";
import { DraftChoice } from "./draft-choice";
import { WriterPage } from "./writer-page";

/** Opens a block: from the server, from the draft that this browser kept, or asks which. */
export function WriterScreen({ id }: { readonly id: string }) {
  const desk = useDesk();
  const coach = desk.coach.peek()?.id ?? "";
  const draft = useMemo(() => draftOf(desk.shelf, coach, id), [id]);
  const load = useLoad<BlockAnswer | null>(`block ${id}`, async () =>
    isOnlyHere(id) ? null : block(id),
  );
  // What is open stays open: an answer that comes later, after a new log-in say, opens nothing else.
  const settled = useRef<Opening | null>(null);
  const [, draw] = useReducer((count: number) => count + 1, 0);
  const opened = settled.current ?? toOpen(load.now, draft);
  if (opened && opened.from !== "both") settled.current = opened;
  const needless = draft !== null && opened?.from === "server";
  useEffect(() => {
    if (needless) dropDraft(desk.shelf, coach, id);
  }, [needless]);
  if (opened && opened.from !== "both") return <WriterPage id={id} opening={opened} />;
  const above = <Link to={BLOCKS}>Blocks</Link>;
  return (
    <Page title={opened?.document.name ?? draft?.document.name ?? "Block"} above={above}>
      {opened && (
        <DraftChoice at={opened.draft.at} onChoice={choose}>
          the server’s block was changed elsewhere on {date(opened.base)}
        </DraftChoice>
      )}
      {!opened && load.now.state === "loading" && <p class="waiting">Fetching the block …</p>}
      {!opened && load.now.state === "failed" && (
        <Failure fault={load.now.fault} what="block" again={load.again} />
      )}
      {!opened && load.now.state === "ready" && (
        <p class="lead">This draft is not in this browser any more.</p>
      )}
    </Page>
  );

  function choose(own: boolean) {
    if (opened?.from !== "both") return;
    const { base, draft: kept, document } = opened;
    settled.current = own
      ? { from: "draft", document: kept.document, base }
      : { from: "server", document, base };
    draw(0);
  }
}

function toOpen(now: Loaded<BlockAnswer | null>, draft: Draft | null): Opening | null {
  if (now.state === "ready" && now.value) return opening(draft, now.value);
  const silent = now.state === "failed" || (now.state === "ready" && now.value === null);
  if (silent && draft) return { from: "draft", document: draft.document, base: draft.base };
  return null;
}
