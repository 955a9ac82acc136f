import type { LoadSheet } from "../../api/types";
import { calendarDate, dayName } from "../shell/when";
import { PaperExercise } from "./paper-exercise";
import { marksOf } from "./paper-words";

interface PaperSheetProps {
  readonly sheet: LoadSheet;
  readonly block: string;
  readonly signs: readonly string[];
}

/** One session on paper. */
export function PaperSheet({ sheet, block, signs }: PaperSheetProps) {
  const marks = marksOf(sheet.exercises);
  const on = typeof sheet.on === "string" ? ` ${calendarDate(sheet.on)}` : "";
  return (
    <article class="paper">
      <header>
        <h2>{sheet.name}</h2>
        <p>
          {sheet.athlete}, {block}, {sheet.week_name}, {dayName(sheet.day)}
          {on}
        </p>
        <p>
          {sheet.kit}; about {sheet.minutes} minutes; revision {sheet.revision}
        </p>
        {sheet.needs.length > 0 && <p>Needed: {sheet.needs.join(", ")}.</p>}
        {sheet.note && <p>{sheet.note}</p>}
      </header>
      {sheet.exercises.map((exercise, place) => (
        <PaperExercise
          key={exercise.key}
          exercise={exercise}
          mark={marks[place] ?? ""}
          signs={signs}
        />
      ))}
      <footer>
        <p>
          How hard was it all, 0–10: <span class="line" /> Minutes: <span class="line" />
        </p>
        <p>
          Pain, and where: <span class="line long" />
        </p>
        <p>
          Stop at chest pain, fainting, numbness or a pain that is new, and get help. Safeties and
          collars when you lift alone. Local rules and those who treat you come first.
        </p>
      </footer>
    </article>
  );
}
