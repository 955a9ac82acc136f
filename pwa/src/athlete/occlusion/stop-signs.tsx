import "../look/occlusion.css";

import type { StopSign } from "../../api/screening";
import { isUrgent, urgencyOf } from "../../offline/occlusion/after-check";
import { openWraps } from "../../offline/occlusion/wear";
import { useApp } from "../app-context";
import { Disclaimer } from "../stop/stop-screen";
import { type OcclusionKnown, useKnown, useTell } from "./known";
import { capital } from "./words";
import { takeAllOff } from "./worn";

interface Props {
  readonly onSign: (sign: string) => void;
  readonly onPain: () => void;
}

/** What Stop asks while or after a wrap was on: which sign. The gravest stand first. */
export function StopSigns({ onSign, onPain }: Props) {
  const known = useKnown();
  const { phone, sessions } = useApp();
  const tell = useTell();
  if (!known) return null;
  const { stop_signs } = known.questions;
  const grave = stop_signs.filter(({ urgency }) => isUrgent(urgency));

  function choose(sign: string): void {
    onSign(sign);
    takeAllOff(tell, openWraps(known?.entries ?? []), sessions.value, phone.times());
  }

  return (
    <>
      <p class="lead">Put the weight down. Wraps off.</p>
      <SignList label="Emergency" signs={grave} onSign={choose} alarm />
      <button type="button" class="button main" onClick={onPain}>
        Something else hurts
      </button>
      <SignList
        label="Off for today"
        signs={stop_signs.filter((sign) => !grave.includes(sign))}
        onSign={choose}
      />
    </>
  );
}

interface ListProps {
  readonly label: string;
  readonly signs: readonly StopSign[];
  readonly onSign: (sign: string) => void;
  readonly alarm?: boolean;
}

function SignList({ label, signs, onSign, alarm = false }: ListProps) {
  return (
    <div class="stack" role="group" aria-label={label}>
      {signs.map(({ key, text }) => (
        <button
          key={key}
          type="button"
          class={alarm ? "button sign-button sign-grave" : "button sign-button"}
          onClick={() => onSign(key)}
        >
          {capital(text)}
        </button>
      ))}
    </div>
  );
}

/** What to do about the sign, in order. */
export function SignAdvice({ sign }: { readonly sign: string }) {
  const known = useKnown();
  return known && <Advice sign={sign} known={known} />;
}

function Advice({ sign, known }: { readonly sign: string; readonly known: OcclusionKnown }) {
  const { stop_signs, do_now, order } = known.questions;
  const urgency = urgencyOf([sign], stop_signs);
  const grave = isUrgent(urgency);
  return (
    <div role="alert" class={grave ? "advice-block urgent-page" : "advice-block"}>
      <p class="lead">{do_now[urgency]}</p>
      <ol class="steps">
        {order.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ol>
      <p>
        {grave && "Your emergency number is 112 in Europe. Do not drive yourself. "}
        This is recorded; your coach is told when the phone has a network.
      </p>
      <Disclaimer />
    </div>
  );
}
