import { useState } from "preact/hooks";

import type { BlockLine } from "../answers";
import { draftsOf, isOnlyHere, keepDraft, newDraftId, type Draft } from "../block/drafts";
import { freshKey } from "../block/keys";
import { newBlock as emptyBlock } from "../block/weeks";
import { blocks, exportAddress } from "../desk";
import { TextField } from "../fields/text-field";
import { go, useDesk, type Desk } from "../shell/desk-state";
import { Link } from "../shell/link";
import { Page } from "../shell/page";
import { blockPath, TAKE_IN } from "../shell/route";
import { Loaded } from "../shell/states";
import { useLoad } from "../shell/use-load";
import { dayAndClock } from "../shell/when";

export function BlocksScreen() {
  const desk = useDesk();
  const load = useLoad("blocks", blocks);
  const drafts = draftsOf(desk.shelf, desk.coach.value?.id ?? "");
  return (
    <Page title="Blocks">
      <NewBlock />
      <DraftsHere drafts={drafts} />
      <Loaded load={load} what="the blocks">
        {(list) =>
          list.length === 0 ? (
            <p class="lead">
              No blocks on the server yet. Begin one above, or take one in from a file. A new block
              has two weeks; add sessions, then exercises.
            </p>
          ) : (
            <BlockTable list={list} drafts={drafts} />
          )
        }
      </Loaded>
    </Page>
  );
}

function NewBlock() {
  const desk = useDesk();
  const [name, setName] = useState("");
  const begin = (event: Event) => {
    event.preventDefault();
    go(desk, blockPath(beginDraft(desk, name.trim())));
  };
  return (
    <form class="one-line" onSubmit={begin}>
      <TextField
        label="New block"
        width="w20"
        longest={120}
        required
        value={name}
        onValue={setName}
      />
      <button type="submit" class="main" disabled={name.trim() === ""}>
        Begin to write
      </button>
      <Link to={TAKE_IN} class="button">
        Take in a file …
      </Link>
    </form>
  );
}

/** Begins in this browser, so that writing needs no connection; the writer takes it to the server. */
function beginDraft(desk: Desk, name: string): string {
  const document = emptyBlock(name, desk.random);
  const id = newDraftId(freshKey(new Set(), desk.random));
  keepDraft(desk.shelf, desk.coach.peek()?.id ?? "", id, { document, base: null, at: desk.now() });
  return id;
}

type NamedDraft = Draft & { readonly id: string };

function DraftsHere({ drafts }: { readonly drafts: readonly NamedDraft[] }) {
  const now = useDesk().now();
  if (drafts.length === 0) return null;
  return (
    <section class="drafts">
      <h2>Only in this browser so far</h2>
      <ul>
        {drafts.map((draft) => (
          <li key={draft.id}>
            <Link to={blockPath(draft.id)}>{draft.document.name}</Link>
            <small>
              {isOnlyHere(draft.id) ? "new" : "changes"} from {dayAndClock(draft.at, now)}; open it
              to bring it to the server
            </small>
          </li>
        ))}
      </ul>
    </section>
  );
}

interface BlockTableProps {
  readonly list: readonly BlockLine[];
  readonly drafts: readonly NamedDraft[];
}

function BlockTable({ list, drafts }: BlockTableProps) {
  const now = useDesk().now();
  return (
    <table class="ruled">
      <thead>
        <tr>
          <th scope="col">Block</th>
          <th scope="col" class="number">
            Weeks
          </th>
          <th scope="col" class="number">
            Sessions
          </th>
          <th scope="col">Changed</th>
          <th scope="col">Take out</th>
          <th scope="col">Send</th>
        </tr>
      </thead>
      <tbody>
        {list.map((block) => (
          <tr key={block.id}>
            <th scope="row">
              <Link to={blockPath(block.id)}>{block.name}</Link>
            </th>
            <td class="number" data-head="Weeks">
              {block.weeks}
            </td>
            <td class="number" data-head="Sessions">
              {block.sessions}
            </td>
            <td data-head="Changed">
              {dayAndClock(block.updated_at, now)}
              {drafts.some((draft) => draft.id === block.id) && <small>newer text here</small>}
            </td>
            <td data-head="Take out">
              <ExportLink block={block} format="csv" /> <ExportLink block={block} format="json" />
            </td>
            <td>
              <Link to={blockPath(block.id, "send")}>
                Send …<span class="sr-only"> {block.name}</span>
              </Link>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function ExportLink({
  block,
  format,
}: {
  readonly block: BlockLine;
  readonly format: "csv" | "json";
}) {
  return (
    <a
      class="export"
      href={exportAddress(block.id, format)}
      download
      aria-label={`${block.name} as ${format.toUpperCase()}`}
    >
      {format.toUpperCase()}
    </a>
  );
}
