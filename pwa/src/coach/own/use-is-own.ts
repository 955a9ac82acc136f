/** Whether the athlete whose loads are shown does anything in a session otherwise than the block says. */
import type { SessionPlan } from "../../api/types";
import { alike } from "../block/alike";
import { useBeneath, useRemarks } from "../writer/writer-state";
import { sessionBeneath } from "./beneath";

export function useIsOwn(session: SessionPlan): boolean {
  const beneath = useBeneath();
  const { own } = useRemarks();
  if (beneath) return !alike(session, sessionBeneath(beneath.block, session.key));
  return own.some((each) => each.session === session.key);
}
