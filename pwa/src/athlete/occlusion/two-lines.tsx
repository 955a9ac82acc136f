/** The stop signs in two lines, always in sight while a wrap is on. */
export function TwoLines({ lines }: { readonly lines: readonly string[] }) {
  return (
    <ul class="two-lines" aria-label="Stop at once">
      {lines.map((line) => (
        <li key={line}>{line}</li>
      ))}
    </ul>
  );
}
