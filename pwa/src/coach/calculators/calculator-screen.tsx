import { useState } from "preact/hooks";

import { Refused } from "../../api/client";
import type { Calculator } from "../answers";
import { calculators } from "../desk";
import { Link } from "../shell/link";
import { Page } from "../shell/page";
import { CALCULATORS } from "../shell/route";
import { Loaded } from "../shell/states";
import { useLoad } from "../shell/use-load";
import { InputField } from "./input-field";
import { askedFor, faultsOf, lacking, otherFaults, type Given } from "./inputs";
import { Outcome } from "./outcome";
import { useCalculation } from "./use-calculation";

/** One calculator: what it is given on the left, what comes of it on the right. */
export function CalculatorScreen({ name: key }: { readonly name: string }) {
  const load = useLoad<readonly Calculator[]>("calculators", calculators);
  const all = load.now.state === "ready" ? load.now.value : [];
  const found = all.find((one) => one.key === key);
  return (
    <Page
      title={found?.name ?? "Calculator"}
      above={<Link to={CALCULATORS}>Calculators</Link>}
      wide
    >
      <Loaded load={load} what="the calculator">
        {() =>
          found ? <Bench calculator={found} /> : <p>No calculator stands at this address.</p>
        }
      </Loaded>
    </Page>
  );
}

function Bench({ calculator }: { readonly calculator: Calculator }) {
  const [given, setGiven] = useState<Given>({});
  const worked = useCalculation(calculator, given);
  const { inputs, caution } = calculator;
  const asked = askedFor(inputs, given);
  const faults = worked.fault instanceof Refused ? worked.fault.faults : [];
  return (
    <>
      {caution && (
        <p class="mind">
          <b>Mind:</b> {caution}
        </p>
      )}
      <div class="bench">
        <form class="inputs" aria-label="Inputs" onSubmit={(event) => event.preventDefault()}>
          {asked.map((input) => (
            <InputField
              key={input.name}
              input={input}
              value={given[input.name]}
              faults={worked.stale ? [] : faultsOf(faults, input.name)}
              onValue={(value) => setGiven((before) => ({ ...before, [input.name]: value }))}
            />
          ))}
        </form>
        <Outcome
          calculator={calculator}
          worked={worked}
          lacking={lacking(inputs, given)}
          others={otherFaults(faults, asked)}
        />
      </div>
    </>
  );
}
