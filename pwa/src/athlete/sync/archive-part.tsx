import { addressOf } from "../../api/client";
import { usePhoneState } from "../hooks";

/** Everything that the server has of the athlete, to be kept or taken elsewhere. */
export function ArchivePart() {
  const { identity } = usePhoneState();
  if (!identity || identity.refused) return null;
  return (
    <section class="stack" aria-label="Everything about you">
      <h2 class="section-title">Everything about you</h2>
      <p>
        What the server has of you in one file, for programs and for spreadsheets. It needs a
        network, and holds health data: mind where you keep it.
      </p>
      <div class="row">
        <a class="button" href={addressOf("/archive")} download>
          Save the archive
        </a>
      </div>
    </section>
  );
}
