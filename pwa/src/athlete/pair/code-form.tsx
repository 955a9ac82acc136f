import { useState } from "preact/hooks";

import { look } from "../../offline/pairing";
import { ask, type Found, pairingTrouble } from "./pairing";

const LENGTH = 8;

/** The eight characters that a coach, or the page of an invitation, gives out. */
export function CodeForm({ onFound }: { readonly onFound: (found: Found) => void }) {
  const [code, setCode] = useState("");
  const [asking, setAsking] = useState(false);
  const [trouble, setTrouble] = useState<string | null>(null);
  const complete = code.length === LENGTH;

  async function send(): Promise<void> {
    setAsking(true);
    setTrouble(null);
    try {
      onFound({ way: { code }, invitation: await look(ask, { code }) });
    } catch (fault) {
      setTrouble(pairingTrouble(fault));
    }
    setAsking(false);
  }

  return (
    <form
      class="code-form"
      onSubmit={(event) => {
        event.preventDefault();
        if (complete && !asking) void send();
      }}
    >
      <label class="field">
        <span>Code of eight characters</span>
        <input
          class="code-input"
          value={spaced(code)}
          placeholder="XXXX XXXX"
          autocomplete="one-time-code"
          autocapitalize="characters"
          autocorrect="off"
          spellcheck={false}
          enterkeyhint="go"
          maxLength={LENGTH + 1}
          aria-describedby="code-hint"
          onInput={(event) => {
            const typed = tidy(event.currentTarget.value);
            event.currentTarget.value = spaced(typed);
            setCode(typed);
          }}
        />
      </label>
      <p id="code-hint" class="small">
        Capitals or not does not matter. There is no 0, 1, I, L, O or U in it.
      </p>
      {trouble && (
        <p class="notice" role="alert">
          {trouble}
        </p>
      )}
      <button type="submit" class="button main" disabled={!complete || asking}>
        {asking ? "Looking" : "Go on"}
      </button>
    </form>
  );
}

function tidy(typed: string): string {
  return typed
    .toUpperCase()
    .replace(/[^2-9A-Z]/g, "")
    .slice(0, LENGTH);
}

function spaced(code: string): string {
  return code.length > 4 ? `${code.slice(0, 4)} ${code.slice(4)}` : code;
}
