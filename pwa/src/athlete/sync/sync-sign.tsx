import type { SyncMood } from "./sync-words";

const PATHS: Readonly<Record<SyncMood, string>> = {
  sent: "M3 9l4 4 8-9",
  waiting: "M9 15V4M4 8l5-5 5 5",
  trouble: "M9 2l8 14H1zM9 7v4M9 13.5v.5",
};

/** A tick, an arrow on its way, or a warning triangle: told apart by shape. */
export function SyncSign({ mood }: { readonly mood: SyncMood }) {
  return (
    <svg class={`sync-sign sync-${mood}`} viewBox="0 0 18 18" aria-hidden="true">
      <path d={PATHS[mood]} />
    </svg>
  );
}
