/** A week as it would be unfolded, asked anew a moment after each change of text or choices. */
import { useMemo } from "preact/hooks";

import type { Block, Week } from "../../api/types";
import type { UnfoldAnswer } from "../answers";
import { rulesAsked, type Choices } from "../block/unfolding";
import { unfold, type UnfoldAsked } from "../desk";
import { useAfterPause, type Asked } from "../shell/use-after-pause";

export function useUnfolding(
  document: Block,
  week: Week,
  choices: Choices,
  athlete: string,
  id: string | undefined,
): Asked<UnfoldAnswer> {
  const asked = useMemo<UnfoldAsked>(
    () => ({
      document,
      week: week.key,
      weeks: choices.weeks,
      rules: rulesAsked(week, choices),
      anew: choices.anew,
      ...(choices.lightWeek ? { light_week: choices.lightWeek } : {}),
      ...(athlete ? { athlete } : {}),
      ...(id ? { block: id } : {}),
    }),
    [document, week, choices, athlete, id],
  );
  return useAfterPause(asked, athlete, (signal) => unfold(asked, { signal }));
}
