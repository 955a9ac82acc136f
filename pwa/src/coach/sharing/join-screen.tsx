import { useState } from "preact/hooks";

import type { Offer, OfferTaken, OpenedOffer } from "../answers";
import { acceptOffer, lookAtOffer } from "../desk";
import { counted } from "../shell/counted";
import { useDesk } from "../shell/desk-state";
import { Link } from "../shell/link";
import { Page } from "../shell/page";
import { athletePath, ROOT } from "../shell/route";
import { Failure, Loaded } from "../shell/states";
import { useAct } from "../shell/use-act";
import { useLoad } from "../shell/use-load";
import { dayAndClock } from "../shell/when";

/** A link from another coach was opened: who offers what, and a yes. */
export function JoinScreen() {
  const { offered } = useDesk();
  const secret = offered.value;
  return (
    <Page title="An invitation" above={<Link to={ROOT}>Squad</Link>}>
      {secret === null ? (
        <p class="lead">Open the link that you were sent once more: it is not kept here.</p>
      ) : (
        <Opened secret={secret} />
      )}
    </Page>
  );
}

function Opened({ secret }: { readonly secret: string }) {
  const load = useLoad(`offer ${secret}`, () => lookAtOffer(secret));
  const [taken, setTaken] = useState<OfferTaken | null>(null);
  if (taken) return <Taken taken={taken} />;
  return (
    <Loaded load={load} what="invitation">
      {(offer) => <Question offer={offer} secret={secret} onTaken={setTaken} />}
    </Loaded>
  );
}

interface QuestionProps {
  readonly offer: OpenedOffer;
  readonly secret: string;
  readonly onTaken: (taken: OfferTaken) => void;
}

function Question({ offer, secret, onTaken }: QuestionProps) {
  const act = useAct();
  const desk = useDesk();
  return (
    <>
      <p class="lead">
        {offer.coach} {OFFERS[offer.gives]}
      </p>
      <ul>
        {offer.athletes.map(({ id, name }) => (
          <li key={id}>{name}</li>
        ))}
      </ul>
      <p class="aside-note">
        {MEANS[offer.gives]} {offer.keeps && `${offer.coach} keeps the right to read. `}You are
        logged in as {desk.coach.value?.name}. The link is good until{" "}
        {dayAndClock(offer.expires_at, desk.now())}.
      </p>
      <Differing names={offer.differing} counts="would count" />
      {offer.phones > 0 && (
        <p>
          {counted(offer.phones, "phone")} that {offer.coach} paired will stay paired. Afterwards,
          revoke each that you and the athlete do not know.
        </p>
      )}
      <Failure fault={act.fault} />
      <p class="answers">
        <button
          type="button"
          class="main"
          disabled={act.busy}
          onClick={() => act.run(() => acceptOffer(secret), onTaken)}
        >
          {offer.gives === "own" ? "Take over" : "Accept"}
        </button>
        <Link to={ROOT}>Not now</Link>
      </p>
    </>
  );
}

const OFFERS: Readonly<Record<Offer["gives"], string>> = {
  read: "shares with you, to read:",
  write: "shares with you, to read and write:",
  own: "hands over to you:",
};

const MEANS: Readonly<Record<Offer["gives"], string>> = {
  read: "You will see results, pain and screening, which are health data, told to you in confidence.",
  write:
    "You will see results, pain and screening, which are health data, and can send blocks of your own. Phones, signatures and clearances stay with the athlete’s own coach.",
  own: "From then on you answer for what is sent, for screening and for health data. The ledger, every revision and the phones come along.",
};

function Taken({ taken }: { readonly taken: OfferTaken }) {
  return (
    <>
      <p class="lead" role="status">
        {taken.gives === "own" ? "Now in your squad:" : "Now shared with you:"}
      </p>
      <ul>
        {taken.athletes.map(({ id, name }) => (
          <li key={id}>
            <Link to={athletePath(id)}>{name}</Link>
          </li>
        ))}
      </ul>
      <Differing names={taken.differing} counts="counts" />
    </>
  );
}

interface DifferingProps {
  readonly names: readonly string[];
  readonly counts: string;
}

/** Exercises of one key and two meanings. */
function Differing({ names, counts }: DifferingProps) {
  if (names.length === 0) return null;
  return (
    <p>
      Both of you have an exercise called {names.join(", ")}, and they differ. Yours {counts} from
      then on, also for what was sent and done with the other one.
    </p>
  );
}
