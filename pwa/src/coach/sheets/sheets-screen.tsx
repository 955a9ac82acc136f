import { useState } from "preact/hooks";

import type { SheetsAnswer } from "../answers";
import { sheets } from "../desk";
import { ChoiceField } from "../fields/choice-field";
import { useDesk } from "../shell/desk-state";
import { Link } from "../shell/link";
import { Page } from "../shell/page";
import { athletePath } from "../shell/route";
import { Loaded } from "../shell/states";
import { useLoad } from "../shell/use-load";
import { isoDay } from "../shell/when";
import { PaperSheet } from "./paper-sheet";
import { weekAhead, weeksOf } from "./paper-words";

/** The load sheets of an athlete for paper, a page or more for each session. */
export function SheetsScreen({ id }: { readonly id: string }) {
  const load = useLoad(`sheets ${id}`, () => sheets(id));
  const name = load.now.state === "ready" ? load.now.value.name : "";
  return (
    <Page title="Sheets for paper" above={<Link to={athletePath(id)}>{name || "Athlete"}</Link>}>
      <Loaded load={load} what="load sheets">
        {(answer) => <Sheets answer={answer} />}
      </Loaded>
    </Page>
  );
}

const PAPERS = { a4: "A4", a5: "A5" } as const;
type Paper = keyof typeof PAPERS;
const ALL = "";

function Sheets({ answer }: { readonly answer: SheetsAnswer }) {
  const today = isoDay(useDesk().now());
  const [paper, setPaper] = useState<Paper>("a4");
  const [week, setWeek] = useState(() => weekAhead(answer.sheets, today));
  if (answer.sheets.length === 0) return <p class="lead">Nothing was sent yet.</p>;
  const shown = answer.sheets.filter((each) => week === ALL || each.week === week);
  return (
    <>
      <div class="on-screen">
        <p class="aside-note">
          As the phone has them now. A sheet on paper does not follow what is done later: print it
          shortly before, and write the results into the phone or give them to the coach.
        </p>
        <div class="bar">
          <ChoiceField
            label="Sessions"
            choices={{ [ALL]: "All of the block", ...weeksOf(answer.sheets) }}
            value={week}
            onValue={setWeek}
          />
          <ChoiceField label="Paper" choices={PAPERS} value={paper} onValue={setPaper} />
          <button type="button" class="main" onClick={() => print()}>
            Print
          </button>
        </div>
      </div>
      <div class={`papers ${paper}`}>
        {shown.map((sheet) => (
          <PaperSheet
            key={sheet.session}
            sheet={sheet}
            block={answer.block}
            signs={answer.wrap_signs}
          />
        ))}
      </div>
    </>
  );
}
