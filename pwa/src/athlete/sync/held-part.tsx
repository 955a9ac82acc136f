import { usePhoneState } from "../hooks";
import { count } from "../words/sets";

/** Entries that the server keeps but could not place; a person has to look at them. */
export function HeldPart() {
  const held = usePhoneState().entries.filter(({ verdict }) => verdict === "held");
  if (held.length === 0) return null;
  const reasons = new Set(held.map(({ problem }) => problem?.what ?? "it could not be placed"));
  return (
    <details class="next">
      <summary>
        {count(held.length, "entry waits", "entries wait")} for your coach's decision
      </summary>
      <p>They are safe on the server. Your coach decides whether they count.</p>
      <ul>
        {[...reasons].map((reason) => (
          <li key={reason}>{reason}</li>
        ))}
      </ul>
    </details>
  );
}
