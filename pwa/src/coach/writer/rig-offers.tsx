import type { Rig } from "../../api/types";
import { rigInWords } from "../../parts/rig-words";
import type { RigOffer, RigOffers } from "../answers";
import { remarksOf, sharedRemarks, type RigRemark } from "../block/rig-remarks";
import { isTaken } from "../block/rigs";
import { figure, kilos } from "../block/wish-words";
import { SEVERITY_WORDS, SeverityMark } from "../findings/severity-mark";

const POINTS = {
  bar: "on the bar",
  start: "at the start",
  mean: "on the whole",
  lockout: "at lockout",
} as const;

const COLUMNS = 7;

interface RigOfferTableProps {
  readonly found: RigOffers;
  readonly rig: Rig;
  readonly name: string;
  readonly onTake: (rig: Rig) => void;
}

/** Rigs side by side, best first: what hangs where, what it gives, how sure that is. */
export function RigOfferTable({ found, rig, name, onTake }: RigOfferTableProps) {
  const shared = sharedRemarks(found.offers);
  return (
    <table class="ruled rig-offers">
      <caption>{soughtInWords(found, rig, name)}</caption>
      <thead>
        <tr>
          <th scope="col">What hangs</th>
          <th scope="col" class="number">
            Start
          </th>
          <th scope="col" class="number">
            On the whole
          </th>
          <th scope="col" class="number">
            Lockout
          </th>
          <th scope="col" class="number">
            Share
          </th>
          <th scope="col" class="number">
            Doubt
          </th>
          <th scope="col">
            <span class="sr-only">Take</span>
          </th>
        </tr>
      </thead>
      {found.offers.map((offer, place) => (
        <OfferRows
          key={offer.words}
          offer={offer}
          remarks={remarksOf(offer, shared)}
          place={place + 1}
          taken={isTaken(rig, offer.rig)}
          onTake={onTake}
        />
      ))}
      {shared.length > 0 && (
        <tfoot>
          <tr>
            <td colSpan={COLUMNS}>
              <Remarks remarks={shared} />
            </td>
          </tr>
        </tfoot>
      )}
    </table>
  );
}

interface OfferRowsProps {
  readonly offer: RigOffer;
  readonly remarks: readonly RigRemark[];
  readonly place: number;
  readonly taken: boolean;
  readonly onTake: (rig: Rig) => void;
}

function OfferRows({ offer, remarks, place, taken, onTake }: OfferRowsProps) {
  const { places, how } = rigInWords(offer.words);
  return (
    <tbody>
      <tr>
        <th scope="row">
          {places.join(" · ")}
          {how && <span class="how">{how}</span>}
        </th>
        <Figure head="start" value={`${kilos(offer.start_kg)} kg`} />
        <Figure head="on the whole" value={`${kilos(offer.mean_kg)} kg`} />
        <Figure head="lockout" value={`${kilos(offer.lockout_kg)} kg`} />
        <Figure head="share" value={`${tenths(offer.share_percent)} %`} />
        <Figure head="doubt" value={`± ${kilos(offer.doubt_kg)} kg`} />
        <td class="row-end">
          <button type="button" aria-pressed={taken} onClick={() => !taken && onTake(offer.rig)}>
            {taken ? "Taken" : "Take this one"}
            <span class="sr-only">, number {place}</span>
          </button>
        </td>
      </tr>
      {remarks.length > 0 && (
        <tr>
          <td colSpan={COLUMNS}>
            <Remarks remarks={remarks} />
          </td>
        </tr>
      )}
    </tbody>
  );
}

function Figure({ head, value }: { readonly head: string; readonly value: string }) {
  return (
    <td class="number" data-head={head}>
      {value}
    </td>
  );
}

function Remarks({ remarks }: { readonly remarks: readonly RigRemark[] }) {
  return (
    <ul class="findings">
      {remarks.map(({ severity, words }) => (
        <li key={words} class={severity}>
          <SeverityMark severity={severity} />
          <span>
            <span class="sr-only">{SEVERITY_WORDS[severity]}: </span>
            {words}
          </span>
        </li>
      ))}
    </ul>
  );
}

function soughtInWords({ load_kg, base_kg, wanted_kg, why }: RigOffers, rig: Rig, name: string) {
  const of = rig.base === "maximum" ? `the maximum, ${kilos(base_kg)} kg` : `${kilos(load_kg)} kg`;
  const helps = rig.assists ? " less" : "";
  const wanted = `${kilos(wanted_kg)} kg${helps} ${POINTS[rig.point ?? "lockout"]}`;
  return `For ${name}: ${figure(rig.share_percent ?? 0)} % of ${of} is ${wanted}. The heaviest set: ${why}.`;
}

function tenths(value: number): string {
  return figure(Math.round(value * 10) / 10);
}
