/** Sound and vibration at the end of a rest. Each falls away without error where it is not to be had. */

export interface Alarm {
  /** Call from a tap: browsers only let a page sound that was touched. */
  readonly ready: () => void;
  readonly ring: (times: number) => void;
  /** A soft beat; longer and lower where the movement turns. */
  readonly tick: (turns: boolean) => void;
}

const BEEP_S = 0.18;
const PAUSE_S = 0.12;

export function createAlarm(wanted: () => boolean): Alarm {
  let audio: AudioContext | null = null;

  function ready(): void {
    if (!wanted()) return;
    try {
      audio ??= new AudioContext();
      void audio.resume().catch(() => undefined);
    } catch {
      // No sound here; the screen tells it too.
    }
  }

  function ring(times: number): void {
    if (!wanted()) return;
    vibrate(Array.from({ length: times * 2 - 1 }, (_, at) => (at % 2 === 0 ? 200 : 120)));
    if (audio?.state !== "running") return;
    for (let beep = 0; beep < times; beep += 1) {
      sound(audio, audio.currentTime + beep * (BEEP_S + PAUSE_S));
    }
  }

  function tick(turns: boolean): void {
    if (!wanted()) return;
    vibrate([turns ? 60 : 20]);
    if (audio?.state === "running") sound(audio, audio.currentTime, turns ? 440 : 660, 0.08);
  }

  return { ready, ring, tick };
}

function vibrate(pattern: number[]): void {
  if ("vibrate" in navigator) navigator.vibrate(pattern);
}

function sound(audio: AudioContext, at: number, hertz = 740, loud = 0.5): void {
  const tone = audio.createOscillator();
  const volume = audio.createGain();
  tone.frequency.value = hertz;
  volume.gain.setValueAtTime(0.0001, at);
  volume.gain.exponentialRampToValueAtTime(loud, at + 0.02);
  volume.gain.exponentialRampToValueAtTime(0.0001, at + BEEP_S);
  tone.connect(volume).connect(audio.destination);
  tone.start(at);
  tone.stop(at + BEEP_S);
}
