import { useRef, useState } from "preact/hooks";

import { within } from "../block/faults";
import { firstChoices } from "../block/unfolding";
import { withWeek } from "../block/places";
import { copyWeek, moveWeek, putSession, removeWeek } from "../block/weeks";
import { TextField } from "../fields/text-field";
import { Said } from "../shell/states";
import { UnfoldPanel } from "../unfold/unfold-panel";
import { useRemarks, useWriter } from "./writer-state";

interface WeekBarProps {
  readonly athlete: string;
  /** The block's id, once the server has it. */
  readonly id: string | undefined;
}

/** What can be done with the chosen week; unfolded, its loads are those of the `athlete`. */
export function WeekBar({ athlete, id }: WeekBarProps) {
  const writer = useWriter();
  const { faults } = useRemarks();
  const at = writer.place.value.week;
  const week = writer.block.value.weeks[at];
  const { button, open, said, toggle, close } = useUnfoldButton();
  if (!week) return <p class="lead">No weeks yet. Add the first one above.</p>;
  return (
    <>
      <div class="bar week-bar" role="group" aria-label={`Week: ${week.name}`}>
        <TextField
          label="Week"
          width="w12"
          longest={80}
          value={week.name}
          faults={within(faults, `weeks.${at}.name`)}
          onValue={(name) =>
            writer.edit(
              (block) => withWeek(block, at, (each) => ({ ...each, name })),
              `${week.key} name`,
            )
          }
        />
        <CopyWeek at={at} />
        <button
          type="button"
          ref={button}
          aria-expanded={open === week.key}
          disabled={week.sessions.length === 0}
          onClick={() => toggle(week.key)}
        >
          Unfold
        </button>
        <MoveWeek at={at} />
        <PasteSession at={at} />
      </div>
      {said && <Said>{said}</Said>}
      {open === week.key && week.sessions.length > 0 && (
        <UnfoldPanel
          key={week.key}
          week={week}
          at={at}
          athlete={athlete}
          id={id}
          choices={writer.unfoldings.value.get(week.key) ?? firstChoices(writer.block.value, week)}
          onChoices={(choices) => {
            writer.unfoldings.value = new Map(writer.unfoldings.value).set(week.key, choices);
          }}
          onClose={close}
        />
      )}
    </>
  );
}

interface WeekProps {
  readonly at: number;
}

function CopyWeek({ at }: WeekProps) {
  const writer = useWriter();
  const copy = () => {
    writer.edit((block) => copyWeek(block, at, writer.random));
    writer.place.value = { ...writer.place.value, week: at + 1 };
  };
  return (
    <button type="button" onClick={copy}>
      Copy into the next
    </button>
  );
}

/** Elsewhere in the block, or out of it. */
function MoveWeek({ at }: WeekProps) {
  const writer = useWriter();
  const { weeks } = writer.block.value;
  const step = (by: -1 | 1) => writer.edit((block) => moveWeek(block, at, at + by));
  const remove = () => {
    writer.edit((block) => removeWeek(block, at));
    const place = Math.max(0, at - 1);
    writer.place.value = { week: place, session: weeks[place]?.sessions.length ? 0 : null };
  };
  return (
    <>
      <button type="button" class="plain" disabled={at === 0} onClick={() => step(-1)}>
        Earlier
      </button>
      <button
        type="button"
        class="plain"
        disabled={at === weeks.length - 1}
        onClick={() => step(1)}
      >
        Later
      </button>
      <button type="button" class="plain" onClick={remove}>
        Remove the week
      </button>
    </>
  );
}

function PasteSession({ at }: WeekProps) {
  const writer = useWriter();
  const copied = writer.copied.value;
  if (copied?.kind !== "session") return null;
  const paste = () => writer.edit((block) => putSession(block, at, copied.session, writer.random));
  return (
    <button type="button" onClick={paste}>
      Paste {copied.session.name}
    </button>
  );
}

/** Which week's panel is open, by its key; the focus comes back to the button. */
function useUnfoldButton() {
  const button = useRef<HTMLButtonElement>(null);
  const [open, setOpen] = useState<string | null>(null);
  const [said, setSaid] = useState("");
  const toggle = (key: string) => {
    setSaid("");
    setOpen(open === key ? null : key);
  };
  const close = (words: string) => {
    setSaid(words);
    setOpen(null);
    button.current?.focus();
  };
  return { button, open, said, toggle, close };
}
