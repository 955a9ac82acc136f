import { askForScreening } from "../desk";
import { May } from "../shell/right";
import { Failure } from "../shell/states";
import { useAct } from "../shell/use-act";
import type { PieceProps } from "./screening-part";

/** Before anything was asked: what asking means, and the button. */
export function AskPart({ athlete, onPage }: PieceProps) {
  const act = useAct();
  return (
    <section>
      <h2>Screening for occlusion work</h2>
      <p class="lead">
        Occlusion work holds back a part of a limb’s blood flow, and can hurt people. It stays
        locked until {athlete.name} has answered questions about health and you have read and signed
        them.
      </p>
      <p>
        If you ask, {athlete.name}’s phone shows the questions once it has had signal: illnesses,
        operations, medicines, blood pressure. They take some minutes, and the answers come to you.
        From then on it also asks a few questions before each session with a wrap or cuff on, and
        again one, two and three days after it.
      </p>
      <p>
        Ask only if you mean to plan occlusion work: the answers are health data, and nobody should
        have to give them without need. Local rules and licensed practice come first.
      </p>
      <Failure fault={act.fault} />
      <May needs="write">
        <button
          type="button"
          class="main"
          disabled={act.busy}
          onClick={() => act.run(() => askForScreening(athlete.id), onPage)}
        >
          Ask for it
        </button>
      </May>
    </section>
  );
}
