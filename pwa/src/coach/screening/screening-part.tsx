import { useState } from "preact/hooks";

import type { AthletePage, ScreeningPage } from "../answers";
import { screening } from "../desk";
import { May } from "../shell/right";
import { Loaded } from "../shell/states";
import { useLoad } from "../shell/use-load";
import { AfterPart } from "./after-part";
import { AskPart } from "./ask-part";
import { ClearanceForm } from "./clearance-form";
import { EarlierPart } from "./earlier-part";
import { ExposurePart } from "./exposure-part";
import { LatestPart } from "./latest-part";
import { PressureForm } from "./pressure-form";
import { ReasonsPart } from "./reasons-part";
import { RecordsPart } from "./records-part";
import { StandingPart } from "./standing-part";

interface ScreeningPartProps {
  readonly athlete: AthletePage;
  readonly onChanged: () => void;
}

/** What every piece of this part gets: whose page it is, and where a new one goes. */
export interface PieceProps {
  readonly athlete: AthletePage;
  readonly page: ScreeningPage;
  readonly onPage: (page: ScreeningPage) => void;
}

/** Screening as a coach reads, signs and records it. */
export function ScreeningPart({ athlete, onChanged }: ScreeningPartProps) {
  const load = useLoad(`screening ${athlete.id}`, () => screening(athlete.id));
  const [newest, setNewest] = useState<ScreeningPage | null>(null);
  const take = (page: ScreeningPage) => {
    setNewest(page);
    onChanged();
  };
  return (
    <Loaded load={load} what="the screening">
      {(loaded) => <Pieces athlete={athlete} page={newest ?? loaded} onPage={take} />}
    </Loaded>
  );
}

function Pieces(piece: PieceProps) {
  if (piece.page.asked_at === null) return <AskPart {...piece} />;
  return (
    <>
      <StandingPart {...piece} />
      <ReasonsPart {...piece} />
      <LatestPart {...piece} />
      <May needs="own">
        <ClearanceForm {...piece} />
        <PressureForm {...piece} />
      </May>
      <RecordsPart {...piece} />
      <ExposurePart {...piece} />
      <AfterPart {...piece} />
      <EarlierPart {...piece} />
    </>
  );
}
