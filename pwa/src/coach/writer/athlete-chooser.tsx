import { useState } from "preact/hooks";

import type { SquadLine } from "../answers";
import { squad } from "../desk";
import { ChoiceField } from "../fields/choice-field";
import { useDesk } from "../shell/desk-state";
import { keep, kept } from "../shell/kept";
import { useLoad } from "../shell/use-load";

const NAME = "loads-for";

/** The athlete whose loads stand beside the text; remembered from one block to the next. */
export function useChosenAthlete(): [string, (id: string) => void] {
  const { shelf } = useDesk();
  const [chosen, setChosen] = useState(() => (kept(shelf, NAME) as string | null) ?? "");
  const choose = (id: string) => {
    keep(shelf, NAME, id);
    setChosen(id);
  };
  return [chosen, choose];
}

interface AthleteChooserProps {
  readonly chosen: string;
  readonly onChosen: (id: string) => void;
}

export function AthleteChooser({ chosen, onChosen }: AthleteChooserProps) {
  const load = useLoad<readonly SquadLine[]>("squad", squad);
  const athletes = load.now.state === "ready" ? load.now.value : [];
  const known = athletes.some((each) => each.id === chosen);
  const choices = Object.fromEntries([
    ["", "nobody"],
    ...athletes.map((each) => [each.id, each.name]),
    ...(chosen && !known ? [[chosen, "the same as before"]] : []),
  ]) as Record<string, string>;
  return <ChoiceField label="Loads for" value={chosen} choices={choices} onValue={onChosen} />;
}
