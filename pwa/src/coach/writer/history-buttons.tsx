import { useWriter } from "./writer-state";

export function HistoryButtons() {
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
