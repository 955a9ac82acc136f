import type { Rig } from "../../api/types";
import { NoAnswer } from "../../api/client";
import type { FoundRigs, Named } from "../answers";
import { Link } from "../shell/link";
import { athletePath } from "../shell/route";
import { Failure } from "../shell/states";
import { RigOfferTable } from "./rig-offers";
import { useRigs, type RigPlace } from "./use-rigs";
import { useRemarks, useWriter } from "./writer-state";

interface FindRigsProps {
  readonly rig: Rig;
  readonly place: RigPlace;
  readonly onTake: (rig: Rig) => void;
}

/** What the chosen athlete's kit can make of the share that is written, and taking one of it. */
export function FindRigs(props: FindRigsProps) {
  const { athlete } = useRemarks();
  if (!athlete) {
    return (
      <p class="aside-note">
        Choose above for whom the loads are shown: what can hang depends on that athlete’s kit.
      </p>
    );
  }
  return <RigsOf {...props} athlete={athlete} />;
}

interface RigsOfProps extends FindRigsProps {
  readonly athlete: Named;
}

function RigsOf({ rig, place, onTake, athlete }: RigsOfProps) {
  const { answer, fault, stale } = useRigs(useWriter().block.value, athlete.id, place, rig);
  return (
    <div
      class={`rig-finder${stale ? " stale" : ""}`}
      role="group"
      aria-label={`${rig.part} to find`}
    >
      <p class="sr-only" role="status">
        {stale ? "Looking …" : answer ? countInWords(answer, rig.part) : ""}
      </p>
      {!answer && !fault && <p class="waiting">Looking through the kit …</p>}
      {fault instanceof NoAnswer ? (
        <p class="soft">The search comes back with the server.</p>
      ) : (
        <Failure fault={fault} />
      )}
      {answer && <Answer answer={answer} rig={rig} athlete={athlete} onTake={onTake} />}
    </div>
  );
}

interface AnswerProps {
  readonly answer: FoundRigs;
  readonly rig: Rig;
  readonly athlete: Named;
  readonly onTake: (rig: Rig) => void;
}

function Answer({ answer: { found, none }, rig, athlete, onTake }: AnswerProps) {
  const { id, name } = athlete;
  if (none) {
    return (
      <p class="no-rig">
        <b>Nothing can be looked for.</b> {sentence(`${none.where} ${none.what}; ${none.right}.`)}{" "}
        <Link to={athletePath(id, "kit")}>{name}’s kit</Link>,{" "}
        <Link to={athletePath(id, "person")}>maxima and tape readings</Link>
      </p>
    );
  }
  if (!found) return null;
  return (
    <>
      {found.offers.length > 0 ? (
        <RigOfferTable found={found} rig={rig} name={name} onTake={onTake} />
      ) : (
        <p class="no-rig">
          <b>
            {name}’s kit can hang no {rig.part} for this lift.
          </b>{" "}
          {found.would_do.length > 0 && "What would do:"}
        </p>
      )}
      <Reasons lines={found.would_do} />
      {found.refused.length > 0 && (
        <details open={found.offers.length === 0}>
          <summary>Why others do not hang</summary>
          <Reasons lines={found.refused} />
        </details>
      )}
    </>
  );
}

function Reasons({ lines }: { readonly lines: readonly string[] }) {
  if (lines.length === 0) return null;
  return (
    <ul class="rig-reasons">
      {lines.map((line) => (
        <li key={line}>{line}</li>
      ))}
    </ul>
  );
}

function sentence(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

function countInWords({ found }: FoundRigs, part: string): string {
  const count = found?.offers.length ?? 0;
  return count === 0 ? `No ${part} found` : `${count} found, best first`;
}
