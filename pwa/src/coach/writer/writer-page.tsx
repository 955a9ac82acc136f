import { useEffect, useMemo } from "preact/hooks";

import { isOnlyHere, type Opening } from "../block/drafts";
import { own } from "../block/faults";
import { FindingList } from "../findings/finding-list";
import { LongTextField, TextField } from "../fields/text-field";
import { OwnSwitch } from "../own/own-switch";
import { useDesk } from "../shell/desk-state";
import { Link } from "../shell/link";
import { Page } from "../shell/page";
import { BLOCKS, blockPath, ownPath } from "../shell/route";
import { FaultList } from "../shell/states";
import { AthleteChooser, named, useChosenAthlete, onlyToRead } from "./athlete-chooser";
import { FindingsJump } from "./findings-jump";
import { Grid } from "./grid";
import { HistoryButtons } from "./history-buttons";
import { Keys } from "./keys-help";
import { LoadsState } from "./loads-state";
import { OtherTab } from "./other-tab";
import { SaveWords } from "./save-words";
import { createSaver } from "./saver";
import { SendLink } from "./send-link";
import { SessionEditor } from "./session-editor";
import { useLoads } from "./use-loads";
import { useSessionKept } from "./use-session-kept";
import { useWriterKeys } from "./use-writer-keys";
import { WeekBar } from "./week-bar";
import { WeekFindings } from "./week-findings";
import { createWriter, RemarksProvider, useWriter, WriterProvider } from "./writer-state";

interface WriterPageProps {
  readonly id: string;
  readonly opening: Exclude<Opening, { from: "both" }>;
}

/** A block under the pen, with what it becomes for one athlete beside it. */
export function WriterPage({ id, opening }: WriterPageProps) {
  const desk = useDesk();
  const saver = useMemo(
    () =>
      createSaver(desk, {
        id,
        base: opening.base,
        unsaved: opening.from === "draft" ? opening.document : null,
        onId: (real) => history.replaceState(null, "", blockPath(real)),
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
  const block = writer.block.value;
  const athlete = useChosenAthlete();
  const stored = saver.id.value;
  const known = isOnlyHere(stored) ? undefined : stored;
  const loads = useLoads(block, athlete.id, known);
  const chosen = named(athlete);
  const faults = loads.answer ? loads.answer.faults : saver.faults.value;
  const findings = loads.answer?.findings ?? [];
  const sheets = loads.answer?.sheets ?? [];
  const ownLines = loads.answer?.own ?? [];
  return (
    <WriterProvider value={writer}>
      <RemarksProvider value={{ faults, findings, sheets, athlete: chosen, own: ownLines }}>
        <Page
          title={block.name || "Block without a name"}
          above={<Link to={BLOCKS}>Blocks</Link>}
          aside={<SaveWords saver={saver} />}
          wide
        >
          <div class="writer-bar">
            <HistoryButtons />
            <AthleteChooser athlete={athlete} />
            {chosen && !onlyToRead(athlete) && (
              <OwnSwitch
                saver={saver}
                athlete={chosen}
                on={false}
                to={ownPath(stored, chosen.id)}
              />
            )}
            <LoadsState loads={loads} />
            <FindingsJump />
            <span class="spread" />
            <SendLink saver={saver} />
          </div>
          <OtherTab id={stored} onTake={(document) => writer.edit(() => document)} />
          <FaultList faults={own(faults, "", "weeks")} />
          <FindingList findings={own(findings, "", "weeks")} />
          <Grid />
          <WeekBar athlete={athlete.id} id={known} />
          <WeekFindings />
          <SessionEditor stale={loads.state === "working"} shown={loads.state !== "off"} />
          <AboutBlock />
          <Keys />
        </Page>
      </RemarksProvider>
    </WriterProvider>
  );
}

function AboutBlock() {
  const { block, edit } = useWriter();
  return (
    <section class="apart fields">
      <h2>The block itself</h2>
      <TextField
        label="Name"
        width="w20"
        longest={120}
        value={block.value.name}
        onValue={(name) => edit((before) => ({ ...before, name }), "block name")}
      />
      <LongTextField
        label="Note to the athletes"
        width="full"
        longest={2000}
        value={block.value.note ?? ""}
        onValue={(note) => edit((before) => ({ ...before, note: note || undefined }), "block note")}
      />
    </section>
  );
}
