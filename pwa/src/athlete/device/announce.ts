import { useApp } from "../app-context";

const FLASH_MS = 2_200;

/** Sound, vibration and a full-screen word for a moment; the answer takes the word away at once. */
export function useAnnounce(): (times: number, word: string) => () => void {
  const { alarm, flash } = useApp();
  return (times, word) => {
    alarm.ring(times);
    flash.value = word;
    const off = () => {
      if (flash.value === word) flash.value = null;
    };
    const timer = setTimeout(off, FLASH_MS);
    return () => {
      clearTimeout(timer);
      off();
    };
  };
}
