/** The states that every screen has beside the ordinary one: waiting, failed, faulty, done. */
import type { ComponentChildren } from "preact";

import { NoAnswer, Refused, type Fault } from "../../api/client";
import { inPlainWords } from "./plain-words";
import type { Load } from "./use-load";

interface LoadedProps<T> {
  readonly load: Load<T>;
  readonly what: string;
  readonly children: (value: T) => ComponentChildren;
}

/** Shows what was loaded; until then that it is on its way, or why it did not come. */
export function Loaded<T>({ load, what, children }: LoadedProps<T>) {
  if (load.now.state === "ready") return <>{children(load.now.value)}</>;
  if (load.now.state === "failed") {
    return <Failure fault={load.now.fault} what={what} again={load.again} />;
  }
  return (
    <p class="waiting" role="status">
      Fetching {what} …
    </p>
  );
}

interface FailureProps {
  readonly fault: unknown;
  readonly what?: string;
  readonly again?: () => void;
}

/** Why something did not work, with the places of a faulty document. */
export function Failure({ fault, what, again }: FailureProps) {
  if (fault === null || fault === undefined) return null;
  const listed = fault instanceof Refused ? fault.faults : [];
  return (
    <div class="failure" role="alert">
      <p>
        {what ? `No ${what}: ` : ""}
        {inPlainWords(fault)}
        {fault instanceof NoAnswer && " What you have typed is still here."}
      </p>
      <FaultList faults={listed} />
      {again && (
        <button type="button" onClick={again}>
          Try again
        </button>
      )}
    </div>
  );
}

interface FaultListProps {
  readonly faults: readonly Fault[];
  /** Where the list stands: only the rest of the way is told. */
  readonly at?: string;
}

/** Faults of a document: the place, what is wrong, what would be right. */
export function FaultList({ faults, at }: FaultListProps) {
  if (faults.length === 0) return null;
  return (
    <ul class="faults">
      {faults.map((fault) => (
        <li key={`${fault.path} ${fault.what}`}>
          <Where fault={fault} at={at} />
          <FaultWords fault={fault} />
        </li>
      ))}
    </ul>
  );
}

function Where({ fault, at }: { readonly fault: Fault; readonly at: string | undefined }) {
  const inside = at !== undefined && (fault.path === at || fault.path.startsWith(`${at}.`));
  const rest = inside ? fault.path.slice((at?.length ?? 0) + 1).split(".") : null;
  const words = rest ? rest.join(" ").replaceAll("_", " ") : fault.where;
  return words ? <strong>{words}: </strong> : null;
}

export function FaultWords({ fault }: { readonly fault: Fault }) {
  return (
    <>
      {fault.what}
      {fault.right && <span class="mend">; {fault.right}</span>}
    </>
  );
}

/** Says that something is done, to eyes and to screen readers. */
export function Said({ children }: { readonly children: ComponentChildren }) {
  return (
    <p class="said" role="status">
      {children}
    </p>
  );
}
