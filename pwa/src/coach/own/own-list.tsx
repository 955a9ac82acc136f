import type { Named, OwnLine } from "../answers";
import { SeverityMark } from "../findings/severity-mark";
import { decideOwn } from "../desk";
import { calendarDate } from "../shell/when";
import { Failure } from "../shell/states";
import { useAct } from "../shell/use-act";

interface OwnListProps {
  readonly block: string;
  readonly athlete: Pick<Named, "id" | "name">;
  readonly changes: readonly OwnLine[];
  readonly onDecided: () => void;
  /** Nothing can be decided just now. */
  readonly locked?: boolean;
}

/** What one athlete does otherwise than the block says, and what can be decided about it. */
export function OwnList({ block, athlete, changes, onDecided, locked = false }: OwnListProps) {
  const act = useAct();
  const busy = act.busy || locked;
  const decide = ({ session, exercise }: OwnLine, take: "own" | "block") =>
    act.run(() => decideOwn(block, athlete.id, [{ session, exercise }], take), onDecided);
  return (
    <>
      <ul class="own-list" aria-label={`Own changes of ${athlete.name}`}>
        {changes.map((line) => (
          <li key={`${line.session} ${line.exercise}`}>
            <p>
              <span class="soft">{line.where}:</span> {line.what}
              <span class="soft">
                {" "}
                · {line.accepted ? "accepted" : "written"} {calendarDate(line.since)}
              </span>
            </p>
            {line.beneath && (
              <p class="own-beneath">
                <SeverityMark severity="warn" />
                <span>{upper(line.beneath)}.</span>
              </p>
            )}
            <div class="own-deeds">
              {line.stand === "clash" && (
                <button type="button" disabled={busy} onClick={() => decide(line, "own")}>
                  Keep own
                  <span class="sr-only">: {line.what}</span>
                </button>
              )}
              <button
                type="button"
                class={line.stand === "kept" ? "plain" : undefined}
                disabled={busy}
                onClick={() => decide(line, "block")}
              >
                {BACK[line.stand]}
                <span class="sr-only">: {line.what}</span>
              </button>
            </div>
          </li>
        ))}
      </ul>
      <Failure fault={act.fault} />
    </>
  );
}

const BACK: Readonly<Record<OwnLine["stand"], string>> = {
  kept: "Back to the block’s",
  same: "Back to the block’s",
  clash: "Take the block’s",
  gone: "Drop it",
};

function upper(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
