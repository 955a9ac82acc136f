/** What screens of occlusion work go by: the questions, the standing, and everything told. */
import { useMemo } from "preact/hooks";

import type { LoadSheet } from "../../api/types";
import { type Bodies, draft, type Kind, type Place } from "../../offline/entry";
import { placed } from "../../offline/ledger-view";
import type { Known } from "../../offline/occlusion/standing";
import { useApp } from "../app-context";
import { newsOf, usePhoneState } from "../hooks";

export interface OcclusionKnown extends Known {
  /** Every sheet that the phone has, those of sessions begun among them. */
  readonly sheets: readonly LoadSheet[];
}

/** Null as long as the coach has not asked for a screening. */
export function useKnown(): OcclusionKnown | null {
  const state = usePhoneState();
  const { feed, entries, unsaved, pins } = state;
  return useMemo(() => {
    const questions = newsOf(state, "screening.questions").at(-1);
    const standing = newsOf(state, "screening").at(-1);
    if (!questions || !standing) return null;
    const sheets = [...newsOf(state, "sheet"), ...pins.map(({ sheet }) => sheet)];
    return { questions, standing, entries: placed(state), sheets };
  }, [feed, entries, unsaved, pins]);
}

export interface Tell {
  <K extends Kind>(kind: K, body: Bodies[K], place?: Place): Promise<boolean>;
}

/** Records one entry after the other. Ids last until the next is there, so a double tap is one. */
export function useTell(): Tell {
  const { phone, clock } = useApp();
  const { entries, unsaved } = usePhoneState();
  const ids = useMemo<Map<string, string>>(() => new Map(), [entries, unsaved]);
  return (kind, body, place = {}) => {
    const what = JSON.stringify([kind, body, place]);
    const id = ids.get(what) ?? phone.newId();
    ids.set(what, id);
    return phone.record(draft(id, clock.now(), kind, body, place));
  };
}
