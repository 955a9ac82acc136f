import { useState } from "preact/hooks";

import type { Named, SquadLine } from "../answers";
import { squad } from "../desk";
import { ChoiceField } from "../fields/choice-field";
import { useDesk } from "../shell/desk-state";
import { keep, kept } from "../shell/kept";
import { useLoad } from "../shell/use-load";

interface ChosenAthlete {
  /** "" for nobody. */
  readonly id: string;
  readonly choose: (id: string) => void;
  readonly athletes: readonly Pick<SquadLine, "id" | "name" | "right">[];
}

/** The athlete whose loads stand beside the text: the last one chosen, or the first of the squad. */
export function useChosenAthlete(): ChosenAthlete {
  const { shelf, coach } = useDesk();
  const name = `loads-for.${coach.peek()?.id ?? ""}`;
  const [chosen, setChosen] = useState(() => kept(shelf, name) as string | null);
  const load = useLoad<readonly SquadLine[]>("squad", squad);
  const athletes = load.now.state === "ready" ? load.now.value : [];
  const choose = (id: string) => {
    keep(shelf, name, id);
    setChosen(id);
  };
  return { id: chosen ?? athletes[0]?.id ?? "", choose, athletes };
}

/** The chosen one with the name that goes with it; null for nobody. */
export function named({ id, athletes }: ChosenAthlete): Named | null {
  if (id === "") return null;
  return { id, name: athletes.find((each) => each.id === id)?.name ?? "this athlete" };
}

/** Whether the chosen one may be read and not written for. */
export function onlyToRead({ id, athletes }: ChosenAthlete): boolean {
  return athletes.find((each) => each.id === id)?.right === "read";
}

interface AthleteChooserProps {
  readonly athlete: ChosenAthlete;
  readonly label?: string;
}

export function AthleteChooser({ athlete, label = "Loads for" }: AthleteChooserProps) {
  const { id, choose, athletes } = athlete;
  const known = id === "" || athletes.some((each) => each.id === id);
  const choices = Object.fromEntries([
    ["", "nobody"],
    ...athletes.map((each) => [each.id, each.name]),
    ...(known ? [] : [[id, "the same as before"]]),
  ]) as Record<string, string>;
  return <ChoiceField label={label} value={id} choices={choices} onValue={choose} />;
}
