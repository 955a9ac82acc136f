import { minutesSeconds } from "../../words/times";

interface Props {
  readonly name: string;
  readonly seconds: number;
  readonly word: string;
  /** 0 to 1; without one there is no line. */
  readonly share?: number;
}

/** A clock that is read from the floor, two metres off. */
export function ClockFace({ name, seconds, word, share }: Props) {
  return (
    <div class="clock-face" role="timer" aria-label={name}>
      <span class="clock-figure">{seconds < 100 ? seconds : minutesSeconds(seconds)}</span>
      <span class="clock-word">{word}</span>
      {share !== undefined && (
        <svg class="clock-line" viewBox="0 0 100 2" preserveAspectRatio="none" aria-hidden="true">
          <rect width={share * 100} height="2" />
        </svg>
      )}
    </div>
  );
}
