import { useState } from "preact/hooks";

import { CopyButton } from "../athlete/copy-button";
import type { NewOffer, OfferAsked } from "../answers";
import { makeOffer } from "../desk";
import { ChoiceField } from "../fields/choice-field";
import { useDesk } from "../shell/desk-state";
import { Failure } from "../shell/states";
import { useAct } from "../shell/use-act";
import { dayAndClock } from "../shell/when";
import { RIGHTS } from "./right-words";

interface OfferFormProps {
  readonly athletes: readonly string[];
  readonly onMade: () => void;
}

/** A link that invites one other coach to these athletes. */
export function InviteForm({ athletes, onMade }: OfferFormProps) {
  const [gives, setGives] = useState<keyof typeof RIGHTS>("read");
  return (
    <OfferButton asked={{ athletes, gives, keeps: null }} words="Make a link" onMade={onMade}>
      <ChoiceField label="The other coach may" choices={RIGHTS} value={gives} onValue={setGives} />
    </OfferButton>
  );
}

const KEEPS = { nothing: "Nothing", read: "The right to read" } as const;

/** A link by which another coach takes the athlete over. */
export function HandOverForm({ athletes, onMade }: OfferFormProps) {
  const [keeps, setKeeps] = useState<keyof typeof KEEPS>("nothing");
  const asked: OfferAsked = { athletes, gives: "own", keeps: keeps === "read" ? "read" : null };
  return (
    <OfferButton asked={asked} words="Make a link to hand over" onMade={onMade}>
      <ChoiceField label="You keep" choices={KEEPS} value={keeps} onValue={setKeeps} />
    </OfferButton>
  );
}

interface OfferButtonProps {
  readonly asked: OfferAsked;
  readonly words: string;
  readonly onMade: () => void;
  readonly children: preact.ComponentChildren;
}

function OfferButton({ asked, words, onMade, children }: OfferButtonProps) {
  const act = useAct();
  const [made, setMade] = useState<NewOffer | null>(null);
  const make = (event: Event) => {
    event.preventDefault();
    act.run(
      () => makeOffer(asked),
      (answer) => {
        setMade(answer);
        onMade();
      },
    );
  };
  return (
    <>
      <form class="one-line" onSubmit={make}>
        {children}
        <button type="submit" disabled={act.busy || asked.athletes.length === 0}>
          {words}
        </button>
      </form>
      <Failure fault={act.fault} />
      {made && <Made made={made} />}
    </>
  );
}

function Made({ made }: { readonly made: NewOffer }) {
  const now = useDesk().now();
  return (
    <div class="made-link" role="status">
      <p>
        <code class="secret">{made.url}</code>
      </p>
      <CopyButton text={made.url} what="link" />
      <p>Shown only now. Good for one coach, until {dayAndClock(made.expires_at, now)}.</p>
    </div>
  );
}
