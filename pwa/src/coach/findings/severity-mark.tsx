import type { Finding } from "../answers";

type Severity = Finding["severity"];

export const SEVERITY_WORDS: Readonly<Record<Severity, string>> = {
  stop: "stop",
  warn: "warning",
  note: "note",
};

const SHAPES: Readonly<Record<Severity, string>> = {
  stop: "M4.3 1h5.4L13 4.3v5.4L9.7 13H4.3L1 9.7V4.3z",
  warn: "M7 1.5 13 12.5H1z",
  note: "M7 3.5a3.5 3.5 0 1 0 0 7 3.5 3.5 0 1 0 0-7z",
};

/** An octagon, a triangle or a ring: told apart without colour, and named beside it. */
export function SeverityMark({ severity }: { readonly severity: Severity }) {
  return (
    <svg
      class={`severity-mark ${severity}`}
      viewBox="0 0 14 14"
      width="14"
      height="14"
      aria-hidden="true"
    >
      <path d={SHAPES[severity]} />
    </svg>
  );
}
