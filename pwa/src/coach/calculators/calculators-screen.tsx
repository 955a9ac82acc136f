import type { Calculator } from "../answers";
import { calculators } from "../desk";
import { Link } from "../shell/link";
import { Page } from "../shell/page";
import { calculatorPath } from "../shell/route";
import { Loaded } from "../shell/states";
import { useLoad } from "../shell/use-load";

/** Every calculator with where it holds. */
export function CalculatorsScreen() {
  const load = useLoad<readonly Calculator[]>("calculators", calculators);
  return (
    <Page title="Calculators">
      <p class="lead">
        One number at a time, each with its formula, where that comes from, where it holds and how
        far to trust it. Nothing is kept.
      </p>
      <Loaded load={load} what="the calculators">
        {(all) => (
          <ul class="plain-list">
            {all.map(({ key, name, range }) => (
              <li key={key}>
                <Link to={calculatorPath(key)}>{name}</Link>
                <br />
                <span class="soft">{range}</span>
              </li>
            ))}
          </ul>
        )}
      </Loaded>
    </Page>
  );
}
