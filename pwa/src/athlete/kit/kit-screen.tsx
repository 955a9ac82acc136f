import { newsOf, usePhoneState, useUnits } from "../hooks";
import { TopBar } from "../top-bar";
import { PieceRow } from "./piece-row";
import { shelvesOf } from "./pieces";
import { goneOf, type Proposal, proposalsOf } from "./proposals";
import { usePropose } from "./use-propose";

/** What the app believes stands here. What is otherwise is proposed to the coach. */
export function KitScreen() {
  const state = usePhoneState();
  const units = useUnits();
  const kit = newsOf(state, "kit").at(-1);
  const shelves = kit ? shelvesOf(kit, units) : [];
  const proposals = proposalsOf(state);
  const coach = state.identity?.coach ?? "your coach";
  return (
    <div class="screen">
      <TopBar title="Kit" back="/" />
      <main class="page">
        {kit ? (
          <>
            <p class="lead">{kit.name}</p>
            <p>
              So stands the kit here for all that is worked out. Tap a piece to say that it is
              otherwise; {coach} decides.
            </p>
            {shelves.map(({ title, pieces }) => (
              <section key={title} aria-label={title}>
                <h2 class="section-title">{title}</h2>
                {pieces.map((piece) => (
                  <PieceRow
                    key={`${piece.list} ${piece.name}`}
                    piece={piece}
                    proposals={proposals}
                  />
                ))}
              </section>
            ))}
            <Gone
              gone={goneOf(
                proposals,
                shelves.flatMap(({ pieces }) => pieces),
              )}
            />
          </>
        ) : (
          <section class="card empty">
            <h2>No kit yet</h2>
            <p>{coach} has not written down what stands in your gym, or it is on its way.</p>
          </section>
        )}
      </main>
    </div>
  );
}

function Gone({ gone }: { readonly gone: readonly Proposal[] }) {
  const propose = usePropose();
  if (gone.length === 0) return null;
  return (
    <section class="stack" aria-label="Said to be gone">
      <h2 class="section-title">Said to be gone</h2>
      {gone.map(({ entry, change }) => (
        <button
          key={entry.id}
          type="button"
          class="button"
          onClick={() =>
            change.kind === "gone" && propose(entry.body.item, { ...change, kind: "back" })
          }
        >
          {entry.body.item} is here again
        </button>
      ))}
    </section>
  );
}
