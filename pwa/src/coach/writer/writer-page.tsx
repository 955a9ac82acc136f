import { useEffect, useMemo } from "preact/hooks";

import { NoAnswer } from "../../api/client";
import type { Opening } from "../block/drafts";
import { own } from "../block/faults";
import { FindingList } from "../findings/finding-list";
import { countsInWords, countsOf } from "../findings/findings";
import { LongTextField, TextField } from "../fields/text-field";
import { counted } from "../shell/counted";
import { useDesk } from "../shell/desk-state";
import { Link } from "../shell/link";
import { Page } from "../shell/page";
import { BLOCKS, blockPath } from "../shell/route";
import { Failure, FaultList } from "../shell/states";
import { AthleteChooser, named, useChosenAthlete } from "./athlete-chooser";
import { FindingsJump } from "./findings-jump";
import { Grid } from "./grid";
import { Keys } from "./keys-help";
import { OtherTab } from "./other-tab";
import { SaveWords } from "./save-words";
import { createSaver } from "./saver";
import { SendLink } from "./send-link";
import { SessionEditor } from "./session-editor";
import { useLoads, type Loads } from "./use-loads";
import { useWriterKeys } from "./use-writer-keys";
import { WeekBar } from "./week-bar";
import {
  createWriter,
  RemarksProvider,
  useRemarks,
  useWriter,
  WriterProvider,
} from "./writer-state";

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
    () => createWriter(opening.document, desk.random, desk.now, saver.changed),
    [],
  );
  useEffect(() => saver.stop, []);
  useWriterKeys(writer, saver.saveNow);
  const block = writer.block.value;
  const athlete = useChosenAthlete();
  const loads = useLoads(block, athlete.id);
  const faults = loads.answer ? loads.answer.faults : saver.faults.value;
  const findings = loads.answer?.findings ?? [];
  const sheets = loads.answer?.sheets ?? [];
  return (
    <WriterProvider value={writer}>
      <RemarksProvider value={{ faults, findings, sheets, athlete: named(athlete) }}>
        <Page
          title={block.name || "Block without a name"}
          above={<Link to={BLOCKS}>Blocks</Link>}
          aside={<SaveWords saver={saver} />}
          wide
        >
          <div class="writer-bar">
            <History />
            <AthleteChooser athlete={athlete} />
            <LoadsState loads={loads} />
            <FindingsJump />
            <span class="spread" />
            <SendLink saver={saver} />
          </div>
          <OtherTab id={saver.id.value} onTake={(document) => writer.edit(() => document)} />
          <FaultList faults={own(faults, "", "weeks")} />
          <FindingList findings={own(findings, "", "weeks")} />
          <Grid />
          <WeekBar athlete={athlete.id} />
          <WeekFindings />
          <SessionEditor stale={loads.state === "working"} shown={loads.state !== "off"} />
          <AboutBlock />
          <Keys />
        </Page>
      </RemarksProvider>
    </WriterProvider>
  );
}

function WeekFindings() {
  const { week } = useWriter().place.value;
  return <FindingList findings={own(useRemarks().findings, `weeks.${week}`, "sessions")} />;
}

function History() {
  const writer = useWriter();
  const { past, future } = writer.history.value;
  return (
    <>
      <button type="button" disabled={past.length === 0} onClick={writer.undo}>
        Undo
      </button>
      <button type="button" disabled={future.length === 0} onClick={writer.redo}>
        Redo
      </button>
    </>
  );
}

function LoadsState({ loads }: { readonly loads: Loads }) {
  const faults = loads.answer?.faults.length ?? 0;
  const found = countsInWords(countsOf(loads.answer?.findings ?? []));
  if (loads.state === "failed" && !(loads.fault instanceof NoAnswer)) {
    return <Failure fault={loads.fault} what="loads" />;
  }
  const words = {
    off: "",
    failed: "the loads come back with the server",
    working: "working out the loads …",
    ready: faults > 0 ? counted(faults, "fault") : found ? "" : "nothing found",
  }[loads.state];
  return (
    <span class="soft" role="status">
      {words}
      {loads.state === "ready" && <span class="sr-only">{found}</span>}
    </span>
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
