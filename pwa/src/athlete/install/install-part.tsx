import { useApp } from "../app-context";
import { usePhoneState } from "../hooks";
import { ByHand } from "./by-hand";

/** Why and how to install; `onLater` where it may be put off. */
export function InstallPart({ onLater }: { readonly onLater?: () => void }) {
  const { install } = useApp();
  const coach = usePhoneState().identity?.coach ?? "your coach";
  const offer = install.offer.value;
  return (
    <section class="card" aria-label="Put the app on your home screen">
      <h2>Put it on your home screen</h2>
      <p>It opens there at once, and the browser does not clear what you record.</p>
      {offer ? (
        <button type="button" class="button" onClick={offer}>
          Install the app
        </button>
      ) : (
        <ByHand coach={coach} />
      )}
      {onLater && (
        <button type="button" class="button quiet" onClick={onLater}>
          Not now
        </button>
      )}
    </section>
  );
}
