import "./rig-lines.css";
import { rigInWords } from "./rig-words";

/** Which band or chain hangs where, one place to a line. */
export function RigLines({ lines }: { readonly lines: readonly string[] }) {
  return (
    <div class="rig-lines">
      {lines.map((line) => {
        const { places, how } = rigInWords(line);
        return (
          <div key={line}>
            <ul>
              {places.map((place) => (
                <li key={place}>{place}</li>
              ))}
            </ul>
            {how && <p>{how}</p>}
          </div>
        );
      })}
    </div>
  );
}
