import { useEffect, useRef, useState } from "preact/hooks";

import type { Finding } from "../answers";
import { countsInWords, countsOf, nextAfter, placeOf, topicOf } from "../findings/findings";
import { useRemarks, useWriter, type Writer } from "./writer-state";

/** How much was found; pressed, or with F8, it goes to the next finding and the focus with it. */
export function FindingsJump() {
  const writer = useWriter();
  const { findings } = useRemarks();
  const [looked, setLooked] = useState<Finding | null>(null);
  const next = () => {
    const finding = nextAfter(findings, looked && topicOf(looked));
    if (!finding) return;
    choosePlace(writer, finding);
    setLooked({ ...finding });
  };
  useEffect(() => {
    if (looked) focusOn(topicOf(looked));
  }, [looked]);
  useKey("F8", next);
  const words = countsInWords(countsOf(findings));
  if (!words) return null;
  return (
    <button type="button" class="plain findings-jump" onClick={next}>
      {words}
      <span class="sr-only">: to the next one</span> <span aria-hidden="true">›</span>
    </button>
  );
}

/** Opens the session that the finding speaks of; for a week, the week with what is open in it. */
function choosePlace(writer: Writer, finding: Finding): void {
  const place = placeOf(finding);
  const now = writer.place.peek();
  if (!place || (place.session === null && place.week === now.week)) return;
  const week = writer.block.peek().weeks[place.week];
  writer.place.value =
    place.session === null && week?.sessions.length ? { ...place, session: 0 } : place;
}

function focusOn(topic: string): void {
  const shown = [...document.querySelectorAll<HTMLElement>("[data-finding]")];
  const found = shown.find((each) => each.dataset["finding"] === topic);
  found?.focus({ preventScroll: true });
  found?.scrollIntoView({ block: "center" });
}

function useKey(key: string, deed: () => void): void {
  const newest = useRef(deed);
  newest.current = deed;
  useEffect(() => {
    const press = (event: KeyboardEvent) => {
      if (event.key !== key) return;
      event.preventDefault();
      newest.current();
    };
    window.addEventListener("keydown", press);
    return () => window.removeEventListener("keydown", press);
  }, [key]);
}
