/** Proposed loads as they are read: sets of an exercise that go the same way in one row. */
import type { AcceptedLoad, SessionProposals, SetProposal } from "../answers";
import { kilos } from "../block/wish-words";

export interface ProposalRow {
  readonly key: string;
  readonly session: string;
  readonly exercise: string;
  /** "set 2", "sets 1–4". */
  readonly sets: string;
  readonly first: SetProposal;
  readonly all: readonly SetProposal[];
}

export function rowsOf(session: SessionProposals): ProposalRow[] {
  return session.exercises.flatMap(({ key, name, sets }) =>
    groupsOf(sets).flatMap((all) => {
      const [first] = all;
      if (!first) return [];
      const place = `${session.session} ${key} ${first.set}`;
      return [
        {
          key: place,
          session: session.session,
          exercise: name,
          sets: numbers(all),
          first,
          all,
        },
      ];
    }),
  );
}

function groupsOf(sets: readonly SetProposal[]): SetProposal[][] {
  const groups: SetProposal[][] = [];
  for (const set of sets) {
    const before = groups.at(-1);
    if (before?.[0] && alike(before[0], set)) before.push(set);
    else groups.push([set]);
  }
  return groups;
}

function alike(one: SetProposal, other: SetProposal): boolean {
  return (
    one.kind === other.kind &&
    one.from_kg === other.from_kg &&
    one.to_kg === other.to_kg &&
    one.why === other.why
  );
}

function numbers(all: readonly SetProposal[]): string {
  const [first, last] = [all[0]?.number ?? 0, all.at(-1)?.number ?? 0];
  return first === last ? `set ${first}` : `sets ${first}–${last}`;
}

/** "85 → 87.5 kg", "85 kg"; nothing where no load is known. */
export function figuresOf({ from_kg, to_kg }: SetProposal): string {
  const parts = [from_kg, to_kg].flatMap((kg) => (kg === null ? [] : [kilos(kg)]));
  return parts.length > 0 ? `${parts.join(" → ")} kg` : "";
}

/** The loads of the chosen rows, as they were shown. */
export function acceptedOf(
  rows: readonly ProposalRow[],
  left: ReadonlySet<string>,
): AcceptedLoad[] {
  return rows
    .filter(({ key, first }) => first.kind === "proposed" && !left.has(key))
    .flatMap(({ session, all }) =>
      all.flatMap(({ set, to_kg }) => (to_kg === null ? [] : [{ session, set, kg: to_kg }])),
    );
}
