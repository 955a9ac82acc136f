import { useEffect, useMemo, useState } from "preact/hooks";

import type { BlockAnswer, Named, OwnBlock, OwnLine } from "../answers";
import type { Opening } from "../block/drafts";
import { own as ownTo } from "../block/faults";
import { FindingList } from "../findings/finding-list";
import { useDesk } from "../shell/desk-state";
import { Link } from "../shell/link";
import { Page } from "../shell/page";
import { BLOCKS, blockPath } from "../shell/route";
import { FaultList } from "../shell/states";
import { FindingsJump } from "../writer/findings-jump";
import { Grid } from "../writer/grid";
import { HistoryButtons } from "../writer/history-buttons";
import { Keys } from "../writer/keys-help";
import { LoadsState } from "../writer/loads-state";
import { SaveWords } from "../writer/save-words";
import { createSaver, type Saver } from "../writer/saver";
import { SessionEditor } from "../writer/session-editor";
import { useLoads, type Loads } from "../writer/use-loads";
import { useSessionKept } from "../writer/use-session-kept";
import { useWriterKeys } from "../writer/use-writer-keys";
import { WeekFindings } from "../writer/week-findings";
import {
  BeneathProvider,
  createWriter,
  RemarksProvider,
  WriterProvider,
} from "../writer/writer-state";
import { bringOwn } from "./bring-own";
import { OwnList } from "./own-list";
import { OwnSwitch } from "./own-switch";
import { SessionsLeftOut } from "./sessions-left-out";

interface OwnPageProps {
  readonly written: BlockAnswer;
  readonly own: OwnBlock;
  readonly athlete: Named;
  /** Under whose name drafts are kept in this browser. */
  readonly owner: string;
  readonly opening: Exclude<Opening, { from: "both" }>;
  /** Opens all of it anew. */
  readonly again: () => void;
}

/** A block under the pen for one athlete only: the block itself stays as it is written. */
export function OwnPage(props: OwnPageProps) {
  const { written, athlete, again } = props;
  const { saver, writer, changes } = useOwnWriter(props);
  const loads = useLoads(writer.block.value, athlete.id);
  const faults = saver.faults.value.length > 0 ? saver.faults.value : (loads.answer?.faults ?? []);
  const findings = loads.answer?.findings ?? [];
  const sheets = loads.answer?.sheets ?? [];
  return (
    <WriterProvider value={writer}>
      <BeneathProvider value={{ block: written.document, athlete }}>
        <RemarksProvider value={{ faults, findings, sheets, athlete, own: [] }}>
          <Page
            title={`${written.document.name}, for ${athlete.name} only`}
            above={
              <>
                <Link to={BLOCKS}>Blocks</Link> /{" "}
                <Link to={blockPath(written.id)}>{written.document.name}</Link>
              </>
            }
            aside={<SaveWords saver={saver} />}
            wide
          >
            <Bar {...props} saver={saver} loads={loads} />
            <FaultList faults={ownTo(faults, "", "weeks")} />
            <FindingList findings={ownTo(findings, "", "weeks")} />
            <Grid />
            <SessionsLeftOut />
            <WeekFindings />
            <SessionEditor stale={loads.state === "working"} shown={loads.state !== "off"} />
            <AllChanges
              block={written.id}
              athlete={athlete}
              changes={changes}
              saved={saver.saving.value.kind === "saved"}
              again={again}
            />
            <Keys />
          </Page>
        </RemarksProvider>
      </BeneathProvider>
    </WriterProvider>
  );
}

/** The text under the pen, how it is kept, and what in it is otherwise. */
function useOwnWriter({ written, own, athlete, owner, opening }: OwnPageProps) {
  const desk = useDesk();
  const [changes, setChanges] = useState<readonly OwnLine[]>(own.changes);
  const saver = useMemo(
    () =>
      createSaver(desk, {
        id: written.id,
        base: opening.base,
        at: own.changed_at,
        unsaved: opening.from === "draft" ? opening.document : null,
        onId: () => {},
        bring: bringOwn(athlete.id, setChanges),
        owner,
      }),
    [],
  );
  const writer = useMemo(
    () => createWriter(opening.document, desk.random, desk.now, saver.changed, desk.session.peek()),
    [],
  );
  useEffect(() => saver.stop, []);
  useWriterKeys(writer, saver.saveNow);
  useSessionKept(writer);
  return { saver, writer, changes };
}

interface BarProps extends OwnPageProps {
  readonly saver: Saver;
  readonly loads: Loads;
}

function Bar({ written, athlete, again, saver, loads }: BarProps) {
  return (
    <div class="writer-bar">
      <HistoryButtons />
      <OwnSwitch saver={saver} athlete={athlete} on to={blockPath(written.id)} />
      <LoadsState loads={loads} />
      <FindingsJump />
      {saver.saving.value.kind === "refused" && (
        <button type="button" onClick={again}>
          Open it again
        </button>
      )}
    </div>
  );
}

interface AllChangesProps {
  readonly block: string;
  readonly athlete: Named;
  readonly changes: readonly OwnLine[];
  readonly saved: boolean;
  readonly again: () => void;
}

/** All own changes as the server has them; to decide on one opens the text anew. */
function AllChanges({ block, athlete, changes, saved, again }: AllChangesProps) {
  return (
    <section class="apart">
      <h2>Own changes of {athlete.name}</h2>
      <p class="aside-note">
        They are kept apart from the block, and count each time that it is sent to {athlete.name}.
        {!saved && " The list follows once the server has what is written above."}
      </p>
      {changes.length === 0 ? (
        <p class="soft">None yet: {athlete.name} gets the block as it is written.</p>
      ) : (
        <OwnList
          block={block}
          athlete={athlete}
          changes={changes}
          onDecided={again}
          locked={!saved}
        />
      )}
    </section>
  );
}
