import { useEffect, useMemo } from "preact/hooks";

import type { SheetExercise } from "../../../api/types";
import { draft } from "../../../offline/entry";
import { revisionOf } from "../../../offline/ledger-view";
import { uuid7 } from "../../../offline/uuid";
import { useApp } from "../../app-context";
import type { SessionView } from "../view";
import { toTell } from "./tested";

interface Props {
  readonly view: SessionView;
  /** The session ends: attempts that are still open will not be made. */
  readonly over?: boolean;
}

/** Tells what the session's tests have found, once each is over, and again when it is corrected. */
export function TellTests({ view, over = false }: Props) {
  return (
    <>
      {view.exercises.map((exercise) => (
        <TellTest key={exercise.key} view={view} exercise={exercise} over={over} />
      ))}
    </>
  );
}

function TellTest({ view, exercise, over = false }: Props & { readonly exercise: SheetExercise }) {
  const { phone, clock } = useApp();
  const { sheet } = view.session;
  const news = toTell(exercise, view.session, over);
  const name = news && `${news.body.kg} ${news.replaces ?? ""}`;
  const id = useMemo(() => uuid7(clock.now()), [name]);
  useEffect(() => {
    if (!news) return;
    const place = {
      revision: revisionOf(sheet),
      session: sheet.session,
      replaces: news.replaces,
    };
    void phone.record(draft(id, clock.now(), "max.tested", news.body, place));
  }, [name]);
  return null;
}
