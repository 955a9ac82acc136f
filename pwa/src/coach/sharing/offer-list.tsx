import type { Offer } from "../answers";
import { revokeOffer } from "../desk";
import { ColumnHeads } from "../shell/column-heads";
import { useDesk } from "../shell/desk-state";
import { Failure } from "../shell/states";
import { useAct } from "../shell/use-act";
import { dayAndClock } from "../shell/when";
import { givesInWords, namesInWords } from "./right-words";

interface OfferListProps {
  readonly offers: readonly Offer[];
  readonly again: () => void;
}

/** Links that wait to be opened. */
export function OfferList({ offers, again }: OfferListProps) {
  const act = useAct();
  const now = useDesk().now();
  if (offers.length === 0) return null;
  return (
    <>
      <table class="ruled">
        <caption>Links that wait to be opened</caption>
        <ColumnHeads names={["Whom", "Who opens it", "Good until"]} deed="Revoke" />
        <tbody>
          {offers.map((offer) => (
            <tr key={offer.id}>
              <th scope="row">{namesInWords(offer.athletes.map(({ name }) => name))}</th>
              <td data-head="Who opens it">{givesInWords(offer)}</td>
              <td data-head="Good until">{dayAndClock(offer.expires_at, now)}</td>
              <td>
                <button
                  type="button"
                  class="plain"
                  disabled={act.busy}
                  onClick={() => act.run(() => revokeOffer(offer.id), again)}
                >
                  Revoke<span class="sr-only"> this link</span>
                </button>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <Failure fault={act.fault} />
    </>
  );
}
