const KEYS = [
  ["Ctrl Z, Ctrl Shift Z", "undo, redo"],
  ["Ctrl S", "to the server at once"],
  ["F8", "to the next finding"],
  ["← → ↑ ↓ in the weeks", "from session to session; Enter opens it"],
  ["↑ ↓ in a number", "one step more or less; ten with Shift"],
  ["Alt ↑, Alt ↓", "move the line, or from its heading the exercise"],
  ["Ctrl Enter in a line", "the same line once more"],
  ["Alt Backspace in a line", "remove it"],
  ["Enter in “add sets”", "take the shorthand over; once more, to the next exercise"],
  ["Ctrl Enter, Esc while unfolding", "put the weeks in, leave it"],
] as const;

export function Keys() {
  return (
    <details class="keys">
      <summary>Keys and shorthand</summary>
      <dl>
        {KEYS.map(([keys, what]) => (
          <div key={keys}>
            <dt>
              <kbd>{keys}</kbd>
            </dt>
            <dd>{what}</dd>
          </div>
        ))}
      </dl>
      <p>
        Shorthand: sets × repetitions, then the load and the rest in any order.{" "}
        <code>8x3 60% rest 75-90</code>, <code>3x5 100kg</code>, <code>4x8 2rir</code>,{" "}
        <code>3x5 last +2.5</code>, <code>2x6 top 85%</code>, <code>3x8 body +10</code>,{" "}
        <code>3x30s no load</code>, <code>4x40m 60kg</code>, <code>4x2+2+2 80%</code>. Without a
        load, the one of the last line is taken.
      </p>
    </details>
  );
}
