import { useApp } from "../app-context";
import { usePhoneState, useUnderWay } from "../hooks";
import { type Fact, factsOf } from "./facts";

/** What there is to know and to do, worst first; and the promise of the browser where it was given. */
export function FactsPart({ now }: { readonly now: number }) {
  const { update } = useApp();
  const state = usePhoneState();
  const around = { now, update: update.waiting.value, underWay: useUnderWay() !== null };
  const facts = factsOf(state, around);
  return (
    <div class="stack" aria-live="polite">
      {facts.map((fact) => (
        <div key={fact.is} class={fact.weight}>
          <p>
            <strong>{fact.what}</strong> {fact.todo}
          </p>
          <Way fact={fact} />
        </div>
      ))}
      {state.notes.persisted && <p>This browser has promised to keep what is recorded here.</p>}
    </div>
  );
}

/** The button that does what the fact asks for, where one can. */
function Way({ fact }: { readonly fact: Fact }) {
  const { phone, router, update } = useApp();
  switch (fact.is) {
    case "full":
    case "silent storage":
      return <Button label="Try again" onTap={() => void phone.retry()} />;
    case "revoked":
    case "log-in expired":
      return <Button label="Pair again" onTap={() => router.go("/pair")} />;
    case "update ready":
      return <Button label="Use it now" onTap={update.useNow} />;
    default:
      return null;
  }
}

function Button({ label, onTap }: { readonly label: string; readonly onTap: () => void }) {
  return (
    <button type="button" class="button" onClick={onTap}>
      {label}
    </button>
  );
}
