/** A photo or clip of the exercise behind a button, with its words where it is not to be had. */
import "../look/pictures.css";
import { useEffect, useLayoutEffect, useRef, useState } from "preact/hooks";

import type { PictureNews } from "../../api/sync";
import { pictureAddress } from "../../offline/picture-cache";
import { bringOne, isHere } from "../../offline/pictures";
import { pictureParts } from "./parts";

interface Props {
  readonly name: string;
  readonly picture: PictureNews;
}

export function HowItLooks(props: Props) {
  const [open, setOpen] = useState(false);
  return (
    <>
      <button type="button" class="looks" onClick={() => setOpen(true)}>
        How it looks
      </button>
      {open && <Shown {...props} onClose={() => setOpen(false)} />}
    </>
  );
}

type Where = "looking" | "here" | "away" | "coming" | "no answer";

function Shown({ name, picture, onClose }: Props & { readonly onClose: () => void }) {
  const [where, setWhere] = useState<Where>("looking");
  const box = useRef<HTMLDialogElement>(null);
  useLayoutEffect(() => box.current?.showModal?.(), []);
  useEffect(() => {
    isHere(pictureParts(), picture.hash).then(
      (here) => setWhere(here ? "here" : "away"),
      () => setWhere("away"),
    );
  }, [picture.hash]);
  const fetchIt = () => {
    setWhere("coming");
    bringOne(pictureParts(), picture).then(
      (came) => setWhere(came ? "here" : "no answer"),
      () => setWhere("no answer"),
    );
  };
  return (
    <dialog ref={box} class="looks-box" aria-labelledby="looks" onClose={onClose}>
      <h2 id="looks">{name}</h2>
      {where === "here" ? (
        <Picture picture={picture} onFault={() => setWhere("away")} />
      ) : (
        <NotHere where={where} picture={picture} onFetch={fetchIt} />
      )}
      <button type="button" class="button main" onClick={() => box.current?.close()}>
        Back to the set
      </button>
    </dialog>
  );
}

interface PictureProps {
  readonly picture: PictureNews;
  readonly onFault: () => void;
}

function Picture({ picture: { hash, media, words }, onFault }: PictureProps) {
  const source = pictureAddress(hash);
  const still = matchMedia("(prefers-reduced-motion: reduce)").matches;
  return (
    <figure>
      {media === "video/mp4" ? (
        <video
          src={source}
          aria-label={words}
          controls
          muted
          playsInline
          loop={!still}
          autoplay={!still}
          onError={onFault}
        />
      ) : (
        <img src={source} alt={words} onError={onFault} />
      )}
      <figcaption aria-hidden="true">{words}</figcaption>
    </figure>
  );
}

interface NotHereProps {
  readonly where: Where;
  readonly picture: PictureNews;
  readonly onFetch: () => void;
}

function NotHere({ where, picture: { media, bytes, words }, onFetch }: NotHereProps) {
  if (where === "looking") return null;
  const what = media === "video/mp4" ? "clip" : "photo";
  return (
    <>
      <p class="lead">{words}</p>
      <p role="status">
        {where === "coming" && `The ${what} is on its way.`}
        {where === "no answer" && "No answer. Try again where there is a network."}
        {where === "away" && `The ${what} is not on this phone yet.`}
      </p>
      {where !== "coming" && (
        <button type="button" class="button" onClick={onFetch}>
          Fetch the {what}, {size(bytes)}
        </button>
      )}
    </>
  );
}

function size(bytes: number): string {
  return bytes < 1_000_000 ? `${Math.ceil(bytes / 1000)} kB` : `${(bytes / 1e6).toFixed(1)} MB`;
}
