import { useState } from "preact/hooks";

import type { Picture } from "../answers";
import { pictureAddress, removePicture, setPictureWords } from "../desk";
import { LongTextField } from "../fields/text-field";
import { Failure } from "../shell/states";
import { useAct } from "../shell/use-act";
import { PictureForm } from "./picture-form";
import { IN_WORDS, LONGEST } from "./picture-words";

interface PicturePartProps {
  readonly exercise: string;
  readonly picture: Picture | null;
  readonly onChanged: () => void;
}

/** A photo or clip that shows how the exercise is done, for phones to keep. */
export function PicturePart({ exercise, picture, onChanged }: PicturePartProps) {
  return (
    <section>
      <h2>How it looks</h2>
      {picture ? (
        <Shown picture={picture} />
      ) : (
        <p class="soft">
          No photo or clip yet. Phones show one behind a small button, also without a network.
        </p>
      )}
      <details>
        <summary>{picture ? "Put another in its place" : "Add a photo or clip"}</summary>
        <PictureForm exercise={exercise} words={picture?.words ?? ""} onSaved={onChanged} />
      </details>
      {picture && (
        <Words key={picture.words} exercise={exercise} picture={picture} onChanged={onChanged} />
      )}
    </section>
  );
}

function Shown({ picture: { hash, media, bytes, words } }: { readonly picture: Picture }) {
  const source = pictureAddress(hash);
  return (
    <figure class="picture">
      {media === "video/mp4" ? (
        <video src={source} aria-label={words} controls muted playsInline preload="metadata" />
      ) : (
        <img src={source} alt={words} />
      )}
      <figcaption>
        <span aria-hidden="true">{words}</span> <small>{size(bytes)} on a phone</small>
      </figcaption>
    </figure>
  );
}

interface WordsProps {
  readonly exercise: string;
  readonly picture: Picture;
  readonly onChanged: () => void;
}

function Words({ exercise, picture, onChanged }: WordsProps) {
  const act = useAct();
  const [words, setWords] = useState(picture.words);
  const save = () => act.run(() => setPictureWords(exercise, words.trim()), onChanged);
  const remove = () => {
    if (!window.confirm("Remove it here and from every phone?")) return;
    act.run(() => removePicture(exercise), onChanged);
  };
  return (
    <details>
      <summary>Change its words, or remove it</summary>
      <LongTextField label={IN_WORDS} longest={LONGEST} value={words} onValue={setWords} />
      <div class="bar">
        <button type="button" disabled={act.busy || words.trim() === ""} onClick={save}>
          Save the words
        </button>
        <button type="button" class="plain" disabled={act.busy} onClick={remove}>
          Remove the {picture.media === "video/mp4" ? "clip" : "photo"}
        </button>
      </div>
      <Failure fault={act.fault} />
    </details>
  );
}

function size(bytes: number): string {
  return bytes < 1_000_000 ? `${Math.ceil(bytes / 1000)} kB` : `${(bytes / 1e6).toFixed(1)} MB`;
}
