import { useState } from "preact/hooks";

import type { SheetExercise } from "../../api/types";
import { swapKey, swapped } from "../../offline/plan";
import { failed, type Use, without } from "../../offline/swaps";
import { useApp } from "../app-context";
import { useUnderWay, useUnits } from "../hooks";
import { TopBar } from "../top-bar";
import { loadInWords } from "../words/loads";
import { type Missing, useRecorder } from "./recording";
import { failureInWords } from "./swap-words";
import { useBroken } from "./use-broken";
import { type SessionView, viewSession } from "./view";

/** Another way to do the exercise at hand: what is missing, then what this kit has instead. */
export function SwapScreen() {
  const { focus } = useApp();
  const found = useUnderWay();
  const view = found && viewSession(found.session, focus.value.exercise);
  const line = view?.next?.exercise;
  const exercise = view?.exercises.find(({ key }) => key === line);
  const planned = view?.session.sheet.exercises.find(({ key }) => key === line);
  return (
    <div class="screen">
      <TopBar title="Swap" back="/set" />
      <main class="page">
        {view && exercise && planned ? (
          <Ways key={line} view={view} exercise={exercise} planned={planned} />
        ) : (
          <p class="lead">Nothing is left to swap.</p>
        )}
      </main>
    </div>
  );
}

interface Props {
  readonly view: SessionView;
  /** As it is done now. */
  readonly exercise: SheetExercise;
  readonly planned: SheetExercise;
}

function Ways({ view, exercise, planned }: Props) {
  const { router } = useApp();
  const [use, setUse] = useState<Use | null>(null);
  const recorder = useRecorder(view.session);
  const tellBroken = useBroken();
  const choose = (to: string) => {
    recorder.swap(planned.key, to, use ? missingOf(use) : undefined);
    if (use) tellBroken(use);
    router.replace("/set");
  };
  return (
    <>
      <h2>{exercise.name}</h2>
      <Missed uses={exercise.uses ?? []} use={use} onUse={setUse} />
      <h2>Instead, best first</h2>
      <Offers view={view} exercise={exercise} planned={planned} use={use} onChoose={choose} />
      <button type="button" class="button quiet" onClick={() => router.replace("/set")}>
        Keep {exercise.name}
      </button>
    </>
  );
}

function missingOf(use: Use): Missing {
  return { missing: use.key, why: failureInWords(use) };
}

interface MissedProps {
  readonly uses: readonly Use[];
  readonly use: Use | null;
  readonly onUse: (use: Use | null) => void;
}

function Missed({ uses, use, onUse }: MissedProps) {
  if (uses.length === 0) return null;
  return (
    <fieldset class="choices">
      <legend>What fails? What needs it is left out below.</legend>
      {uses.map((each) => (
        <button
          key={each.key}
          type="button"
          aria-pressed={use?.key === each.key}
          onClick={() => onUse(use?.key === each.key ? null : each)}
        >
          {failureInWords(each)}
        </button>
      ))}
    </fieldset>
  );
}

interface OffersProps extends Props {
  readonly use: Use | null;
  readonly onChoose: (to: string) => void;
}

function Offers({ view, exercise, planned, use, onChoose }: OffersProps) {
  const { record, sheet } = view.session;
  const missing = new Set(failed(sheet.exercises, record).keys());
  if (use) missing.add(use.key);
  const now = record.swapped.get(planned.key)?.at(-1)?.body.to ?? planned.exercise;
  const back = !planned.uses?.some(({ key }) => missing.has(key)) && now !== planned.exercise;
  const others = without(planned.alternatives ?? [], missing).filter((o) => swapKey(o) !== now);
  if (!back && others.length === 0) {
    return (
      <p class="lead">
        This gym has nothing else for {exercise.name} without it. Skip the set, and say why.
      </p>
    );
  }
  return (
    <div class="stack">
      {back && (
        <Offer way={planned} also="as planned" onChoose={() => onChoose(planned.exercise)} />
      )}
      {others.map((other) => (
        <Offer
          key={swapKey(other)}
          way={swapped(planned, swapKey(other))}
          onChoose={() => onChoose(swapKey(other))}
        />
      ))}
    </div>
  );
}

interface OfferProps {
  readonly way: SheetExercise;
  readonly also?: string;
  readonly onChoose: () => void;
}

function Offer({ way, also, onChoose }: OfferProps) {
  const units = useUnits();
  const index = way.sets.find(({ load }) => load !== undefined)?.load;
  const load = index === undefined ? undefined : way.loads?.[index];
  const loaded = load ? loadInWords(way, load.kg, units) : way.loads?.length ? "load by feel" : "";
  const facts = [way.implement.name, loaded, also].filter(Boolean).join(", ");
  return (
    <button type="button" class="button tall offer" onClick={onChoose}>
      {way.name}
      <span class="small">{facts}</span>
    </button>
  );
}
