import { useEffect, useReducer, useState } from "preact/hooks";

import type { BlockAnswer, Named, OwnBlock } from "../answers";
import { draftOf, dropDraft, opening, ownerOf, type Opening } from "../block/drafts";
import { athlete, block, ownBlock } from "../desk";
import { useDesk } from "../shell/desk-state";
import { Link } from "../shell/link";
import { Page } from "../shell/page";
import { blockPath } from "../shell/route";
import { Loaded } from "../shell/states";
import { useLoad } from "../shell/use-load";
import { DraftChoice } from "../writer/draft-choice";
import { OwnPage } from "./own-page";

interface OwnScreenProps {
  /** The block's id. */
  readonly id: string;
  /** The athlete's id. */
  readonly who: string;
}

/** Opens a block as one athlete does it: it needs the server, which lays the own changes over it. */
export function OwnScreen({ id, who }: OwnScreenProps) {
  const [round, again] = useReducer((count: number) => count + 1, 0);
  const load = useLoad(`own ${id} ${who} ${round}`, async () => {
    const [written, own, person] = await Promise.all([block(id), ownBlock(id, who), athlete(who)]);
    return { written, own, person };
  });
  if (load.now.state === "ready") {
    const { written, own, person } = load.now.value;
    return (
      <Opened key={round} written={written} own={own} person={person} again={() => again(0)} />
    );
  }
  return (
    <Page title="Changes for one athlete" above={<Link to={blockPath(id)}>The block</Link>}>
      <Loaded load={load} what="own changes">
        {() => null}
      </Loaded>
    </Page>
  );
}

interface OpenedProps {
  readonly written: BlockAnswer;
  readonly own: OwnBlock;
  readonly person: Named;
  readonly again: () => void;
}

function Opened({ written, own, person, again }: OpenedProps) {
  const { shelf, coach } = useDesk();
  const owner = ownerOf(coach.peek()?.id ?? "", person.id);
  const [opened, setOpened] = useState<Opening>(() =>
    opening(draftOf(shelf, owner, written.id), {
      document: own.document,
      updated_at: own.as_of,
    }),
  );
  useEffect(() => {
    // Nothing in it that the server lacks: its answer was lost, not its text.
    if (opened.from === "server") dropDraft(shelf, owner, written.id);
  }, []);
  if (opened.from !== "both") {
    return (
      <OwnPage
        written={written}
        own={own}
        athlete={{ id: person.id, name: person.name }}
        owner={owner}
        opening={opened}
        again={again}
      />
    );
  }
  const { base, draft, document } = opened;
  const choose = (ours: boolean) => {
    if (!ours) dropDraft(shelf, owner, written.id);
    setOpened(
      ours ? { from: "draft", document: draft.document, base } : { from: "server", document, base },
    );
  };
  return (
    <Page
      title={`For ${person.name} only`}
      above={<Link to={blockPath(written.id)}>The block</Link>}
    >
      <DraftChoice at={draft.at} onChoice={choose}>
        the block or these own changes were changed elsewhere meanwhile: in the draft, all that
        differs from the block of now would be own
      </DraftChoice>
    </Page>
  );
}
