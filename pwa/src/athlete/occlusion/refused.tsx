import { useTop } from "../device/top";
import type { Refusal } from "../../offline/occlusion/lock";
import { limbOf, openSets, sidesOpen } from "../../offline/occlusion/bouts";
import { revisionOf } from "../../offline/ledger-view";
import { useApp } from "../app-context";
import { useArmed } from "../device/armed";
import { type OcclusionKnown, useTell } from "./known";
import type { BoutProps } from "./occlusion-set";
import { limbInWords, whenInWords } from "./words";

interface Props extends BoutProps {
  readonly found: readonly Refusal[];
  readonly now?: number;
  readonly known?: OcclusionKnown;
}

/** Why it cannot be started, and what opens it. */
export function Refused({ view, exercise, found, now = 0, known }: Props) {
  useTop();
  const [first] = found;
  const pause = first?.rule === "break" ? first.at : undefined;
  const urgent = [...new Set(found.flatMap(({ urgent: words }) => words ?? []))];
  return (
    <>
      <main class="page">
        <h2 class="bout-title">{exercise.name}</h2>
        {urgent.map((words) => (
          <p key={words} class="lead urgent" role="alert">
            {words}
          </p>
        ))}
        <p class="lead">{pause === undefined ? "Not now." : nextInWords(view, exercise)}</p>
        <ul class="refusals">
          {found
            .filter(({ rule }) => rule !== "today")
            .map(({ rule, why, opens, at }) => (
              <li key={`${rule} ${why}`}>
                <p>{why}</p>
                <p class="small">
                  {at === undefined ? `What opens it: ${opens}` : `Open ${whenInWords(at, now)}.`}
                </p>
              </li>
            ))}
        </ul>
        {known && pause === undefined && <WayOn found={found} />}
      </main>
      <section class="set-panel" aria-label="What next">
        {first?.rule !== "check" && <Leave view={view} exercise={exercise} />}
      </section>
    </>
  );
}

/** "Next: right upper arm, set 1 of 2." */
function nextInWords(view: BoutProps["view"], exercise: BoutProps["exercise"]): string {
  const { sets } = view.session.record;
  const [side = null] = sidesOpen(exercise, sets);
  const [set] = openSets(exercise, sets, side);
  const place = set ? exercise.sets.indexOf(set) + 1 : 1;
  const limb = limbInWords(limbOf(exercise, side));
  return `Next: ${limb}, set ${place} of ${exercise.sets.length}.`;
}

/** Where it can be opened from here. */
function WayOn({ found }: Pick<Props, "found">) {
  const { router } = useApp();
  const rules = found.map(({ rule }) => rule);
  return (
    <>
      {rules.includes("check") && (
        <button type="button" class="button main" onClick={() => router.go("/after")}>
          Answer the questions
        </button>
      )}
      {(rules.includes("expired") || rules.includes("locked")) && (
        <button type="button" class="button" onClick={() => router.go("/screening")}>
          See your screening
        </button>
      )}
    </>
  );
}

/** The rest of the session goes on without it. */
function Leave({ view, exercise }: BoutProps) {
  const { router } = useApp();
  const tell = useTell();
  const armed = useArmed();

  function leave(): void {
    const { sheet, record } = view.session;
    const place = { revision: revisionOf(sheet), session: sheet.session };
    for (const side of sidesOpen(exercise, record.sets))
      for (const { key } of openSets(exercise, record.sets, side)) {
        const body = { why: "locked on the phone", ...(side && { side }) };
        void tell("set.skipped", body, { ...place, set: key });
      }
  }

  return (
    <div class="row">
      <button type="button" class="button tall" onClick={() => router.go("/sets")}>
        Something else first
      </button>
      <button type="button" class="button tall" disabled={!armed} onClick={leave}>
        Leave it out today
      </button>
    </div>
  );
}
