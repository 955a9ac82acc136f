import { useState } from "preact/hooks";

import { addPicture } from "../desk";
import { LongTextField } from "../fields/text-field";
import { Failure } from "../shell/states";
import { useAct } from "../shell/use-act";
import { IN_WORDS, LONGEST } from "./picture-words";

const TYPES = "image/jpeg,image/png,image/webp,video/mp4,video/quicktime,video/webm";
const MOST_BYTES = 64 * 1024 * 1024;

interface PictureFormProps {
  readonly exercise: string;
  /** What is said of the one that is there. */
  readonly words: string;
  readonly onSaved: () => void;
}

/** A file with its words. Whatever becomes of the sending, both stay until they are stored. */
export function PictureForm({ exercise, words: before, onSaved }: PictureFormProps) {
  const act = useAct();
  const [file, setFile] = useState<File | null>(null);
  const [words, setWords] = useState(before);
  const [share, setShare] = useState(0);
  const heavy = file !== null && file.size > MOST_BYTES;
  const send = () => {
    if (!file) return;
    setShare(0);
    act.run(() => addPicture(exercise, file, words.trim(), setShare), onSaved);
  };
  return (
    <div class="own-fields">
      <FileField disabled={act.busy} onFile={setFile} />
      <LongTextField label={IN_WORDS} longest={LONGEST} value={words} onValue={setWords} />
      <p class="aside-note">
        Where it was taken, and any sound, are left out. A clip may last 20 seconds: one or two
        repetitions from the side show most.
      </p>
      {heavy && <p role="alert">The file is larger than 64 MB. Film it in 1080p, or cut it.</p>}
      <div class="bar">
        <button
          type="button"
          disabled={act.busy || !file || heavy || words.trim() === ""}
          onClick={send}
        >
          {act.fault === null ? "Save it" : "Try again"}
        </button>
        {act.busy && <Progress share={share} />}
      </div>
      <Failure fault={act.fault} />
    </div>
  );
}

interface FileFieldProps {
  readonly disabled: boolean;
  readonly onFile: (file: File | null) => void;
}

function FileField({ disabled, onFile }: FileFieldProps) {
  return (
    <div class="field take-in">
      <label>
        <span class="field-label">A photo (JPEG, PNG, WebP) or a clip (MP4, MOV, WebM)</span>
        <input
          type="file"
          accept={TYPES}
          disabled={disabled}
          onChange={({ currentTarget }) => onFile(currentTarget.files?.[0] ?? null)}
        />
      </label>
    </div>
  );
}

function Progress({ share }: { readonly share: number }) {
  const percent = Math.floor(100 * share);
  return (
    <span class="send-progress">
      <progress max={100} value={percent} aria-label="Sent" />
      <span role="status">
        {share < 1 ? `${percent} % sent` : "Sent. Making it small enough for phones …"}
      </span>
    </span>
  );
}
