import type { Fault } from "../../api/client";
import type { LoadWish } from "../../api/types";
import { within, type Placed } from "../block/faults";
import { changeLine, countLine, type Line, type Prescription } from "../block/lines";
import { pathOf } from "../block/places";
import { lineInWords } from "../block/wish-words";
import { FindingList } from "../findings/finding-list";
import { NumberField } from "../fields/number-field";
import { LineBeneath } from "../own/line-beneath";
import { FaultList } from "../shell/states";
import { ContentFields } from "./content-fields";
import type { ExerciseProps } from "./exercise-editor";
import type { LineDeeds } from "./lines";
import { LineMore } from "./line-more";
import { LineOutcome } from "./line-outcome";
import { WishFields } from "./wish-fields";
import { useKeys } from "./use-keys";
import { useRemarks, useWriter } from "./writer-state";

interface LineRowProps extends ExerciseProps {
  readonly line: Line;
  readonly only: boolean;
  readonly deeds: LineDeeds;
}

export interface LineFieldsProps {
  readonly asks: Prescription;
  readonly name: string;
  readonly change: (part: Partial<Prescription>, field: string) => void;
}

/** One line of equal sets: what it asks for, and beside it what it becomes. */
export function LineRow({ plan, at, session, line, only, deeds }: LineRowProps) {
  const writer = useWriter();
  const { faults, findings } = useRemarks();
  const name = lineInWords(line.sets.length, line.asks);
  const here = onceEach(ofLine(faults, pathOf(at), line));
  const change = (part: Partial<Prescription>, field: string) =>
    deeds.change(changeLine(plan.sets, line, part), `${line.asks.key} ${field}`);
  const count = (sets: number | undefined) => {
    if (sets === undefined) return;
    const next = countLine(plan.sets, line, sets, deeds.taken, writer.random);
    deeds.change(next, `${line.asks.key} count`);
  };
  const row = useKeys((event) => deedOf(event, deeds));
  const fields: LineFieldsProps = { asks: line.asks, name, change };
  return (
    <div class="line" role="group" aria-label={name} ref={row}>
      <div class="line-asks">
        <NumberField
          label={`Sets, ${name}`}
          quiet
          width="w2"
          whole
          least={1}
          value={line.sets.length}
          onValue={count}
        />
        <span class="times" aria-hidden="true">
          ×
        </span>
        <ContentFields {...fields} plan={plan} />
        <WishFields {...fields} />
        <LineMore {...fields} deeds={deeds} only={only} count={line.sets.length} />
        <LineBeneath plan={plan} at={at} session={session} line={line} />
      </div>
      <LineOutcome plan={plan} session={session} line={line} />
      {here.map((fault) => (
        <FaultList key={fault.what} faults={[fault]} at={setPath(fault.path)} />
      ))}
      <FindingList findings={ofLine(findings, pathOf(at), line)} sets={line.sets.length} />
    </div>
  );
}

export const FIRST_WISHES: Readonly<{ [B in LoadWish["basis"]]: Extract<LoadWish, { basis: B }> }> =
  {
    percent: { basis: "percent", percent: 70 },
    kg: { basis: "kg", kg: 20 },
    rir: { basis: "rir", rir: 3 },
    last: { basis: "last" },
    "top-set": { basis: "top-set", percent: 90 },
    body: { basis: "body" },
    none: { basis: "none" },
  };

/** The part of a path that names the set. */
function setPath(path: string): string {
  return path.replace(/(\.sets\.\d+).*$/, "$1");
}

function ofLine<T extends Placed>(all: readonly T[], path: string, line: Line): T[] {
  const here = new Set(
    line.sets.flatMap((_, place) => within(all, `${path}.sets.${line.from + place}`)),
  );
  return all.filter((each) => here.has(each));
}

/** Equal sets have equal faults: they are said once. */
function onceEach(faults: readonly Fault[]): Fault[] {
  return faults.filter((fault, at) => faults.findIndex((each) => each.what === fault.what) === at);
}

function deedOf(event: KeyboardEvent, deeds: LineDeeds): (() => void) | null {
  if (event.altKey && event.key === "ArrowUp") return () => deeds.move(-1);
  if (event.altKey && event.key === "ArrowDown") return () => deeds.move(1);
  if (event.altKey && event.key === "Backspace") return deeds.remove;
  return (event.ctrlKey || event.metaKey) && event.key === "Enter" ? deeds.copy : null;
}
