import type { LoadWish } from "../../api/types";
import { WISH_NAMES } from "../block/wish-words";
import { ChoiceField } from "../fields/choice-field";
import { NumberField } from "../fields/number-field";
import { FIRST_WISHES, type LineFieldsProps } from "./line-row";

/** The load that is wished for: a figure and what it is a figure of. */
export function WishFields({ asks, name, change }: LineFieldsProps) {
  const wish = asks.load;
  return (
    <>
      <WishFigure wish={wish} name={name} onWish={(load) => change({ load }, "load")} />
      <ChoiceField<LoadWish["basis"]>
        label={`Load, ${name}`}
        quiet
        choices={WISH_NAMES}
        value={wish.basis}
        onValue={(basis) => change({ load: FIRST_WISHES[basis] }, "basis")}
      />
    </>
  );
}

interface WishFigureProps {
  readonly wish: LoadWish;
  readonly name: string;
  readonly onWish: (wish: LoadWish) => void;
}

function WishFigure({ wish, name, onWish }: WishFigureProps) {
  const look = { quiet: true, width: "w3" } as const;
  switch (wish.basis) {
    case "percent":
    case "top-set":
      return (
        <NumberField
          {...look}
          label={`Percent, ${name}`}
          step={2.5}
          value={wish.percent}
          onValue={(percent) => percent !== undefined && onWish({ ...wish, percent })}
        />
      );
    case "kg":
      return (
        <NumberField
          {...look}
          label={`Kilograms, ${name}`}
          step={2.5}
          value={wish.kg}
          onValue={(kg) => kg !== undefined && onWish({ ...wish, kg })}
        />
      );
    case "rir":
      return (
        <NumberField
          {...look}
          label={`Repetitions in reserve, ${name}`}
          value={wish.rir}
          onValue={(rir) => rir !== undefined && onWish({ ...wish, rir })}
        />
      );
    case "last":
    case "body":
      return (
        <NumberField
          {...look}
          label={`Kilograms more or less, ${name}`}
          unit="± kg"
          step={2.5}
          least={-150}
          value={wish.add_kg}
          onValue={(add_kg) => onWish({ ...wish, add_kg })}
        />
      );
    case "none":
      return null;
  }
}
