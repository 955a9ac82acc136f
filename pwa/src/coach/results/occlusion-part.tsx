import type { OcclusionResult, Worn } from "../answers";
import { kilos } from "../block/wish-words";
import { IssueList } from "../findings/issue-list";
import { ColumnHeads } from "../shell/column-heads";
import { askedInWords, wearPlanned, wornInWords } from "./occlusion-words";

/** What the wrap or cuff of an exercise was meant to be, and what its repetitions ask for. */
export function OcclusionLines({ asked }: { readonly asked: OcclusionResult }) {
  const wear = wearPlanned(asked);
  return (
    <>
      <p class="aside-note">
        {askedInWords(asked)}
        {wear && `; ${wear}`}.
      </p>
      {asked.next && (
        <p>
          <b>Next time {kilos(asked.next.kg)} kg:</b> {asked.next.why}
          {/[.?]$/.test(asked.next.why) ? "" : "."}
        </p>
      )}
      <IssueList issues={asked.asks} />
    </>
  );
}

/** How long each limb had it on in the session, as the phone told it. */
export function WornPart({ worn }: { readonly worn: readonly Worn[] }) {
  if (worn.length === 0) return null;
  return (
    <>
      <table class="ruled figures set-results worn">
        <caption>Time with a wrap or cuff on</caption>
        <ColumnHeads names={["Limb", "Worn"]} />
        <tbody>
          {worn.map((one) => (
            <tr key={one.limb}>
              <th scope="row">{one.limb}</th>
              <td data-head="Worn">
                {wornInWords(one)}
                {!one.closed && <span class="soft"> (counted up to the limit)</span>}
                <IssueList issues={one.issues} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}
