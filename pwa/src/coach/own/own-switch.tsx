import type { Named } from "../answers";
import { TruthField } from "../fields/choice-field";
import { useGoOnceSaved } from "../writer/go-once-saved";
import type { Saver } from "../writer/saver";

interface OwnSwitchProps {
  readonly saver: Saver;
  readonly athlete: Named;
  readonly on: boolean;
  /** The page on the other side of the switch. */
  readonly to: string;
}

/** Whether what is written counts for one athlete only; thrown once the server has what is here. */
export function OwnSwitch({ saver, athlete, on, to }: OwnSwitchProps) {
  const { wanted, leave } = useGoOnceSaved(saver, to);
  const label = `Changes for ${athlete.name} only`;
  return (
    <>
      <TruthField label={label} value={on !== wanted} onValue={leave} />
      {wanted && (
        <span class="soft" role="status">
          once this is on the server
        </span>
      )}
    </>
  );
}
