/** The trade's four figures: lowering, pause, lifting, pause. */
export interface Tempo {
  readonly lowering_s: number;
  readonly pause_low_s: number;
  readonly lifting_s: number;
  readonly pause_high_s: number;
}

interface Part {
  readonly word: string;
  readonly seconds: number;
}

function partsOf({ lowering_s, pause_low_s, lifting_s, pause_high_s }: Tempo): Part[] {
  return [
    { word: "Down", seconds: lowering_s },
    { word: "Pause", seconds: pause_low_s },
    { word: "Up", seconds: lifting_s },
    { word: "Pause", seconds: pause_high_s },
  ];
}

/** "4 s down, pause 1 s, 1 s up, no pause"; 0 s of movement is as fast as it goes. */
export function tempoInWords({ lowering_s, pause_low_s, lifting_s, pause_high_s }: Tempo): string {
  const move = (seconds: number, way: string) =>
    seconds === 0 ? `${way} fast` : `${seconds} s ${way}`;
  const pause = (seconds: number) => (seconds === 0 ? "no pause" : `pause ${seconds} s`);
  return [
    move(lowering_s, "down"),
    pause(pause_low_s),
    move(lifting_s, "up"),
    pause(pause_high_s),
  ].join(", ");
}

interface BeatState {
  readonly rep: number;
  readonly word: string;
  /** Seconds of this part that are left, the one at hand included. */
  readonly left: number;
  /** A part begins with this second. */
  readonly turns: boolean;
}

/** Where a beat stands so many whole seconds after its start; null where the tempo has no length. */
export function beatAt(tempo: Tempo, elapsedS: number): BeatState | null {
  const parts = partsOf(tempo).filter(({ seconds }) => seconds > 0);
  const whole = parts.reduce((sum, { seconds }) => sum + seconds, 0);
  if (whole === 0) return null;
  let into = elapsedS % whole;
  for (const { word, seconds } of parts) {
    if (into < seconds) {
      const rep = Math.floor(elapsedS / whole) + 1;
      return { rep, word, left: seconds - into, turns: into === 0 };
    }
    into -= seconds;
  }
  return null;
}
