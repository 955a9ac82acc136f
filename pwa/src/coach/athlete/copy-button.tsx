import { useState } from "preact/hooks";

interface CopyButtonProps {
  readonly text: string;
  readonly what: string;
}

export function CopyButton({ text, what }: CopyButtonProps) {
  const [words, setWords] = useState("");
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(text);
      setWords("Copied.");
    } catch {
      setWords(`This browser does not let the desk copy. Select the ${what} and copy it by hand.`);
    }
  };
  return (
    <span class="copy">
      <button type="button" onClick={() => void copy()}>
        Copy the {what}
      </button>
      <span role="status">{words}</span>
    </span>
  );
}
