/** Where in a block something stands: places counted from 0, as in the paths of faults. */
import type { Block, ExercisePlan, SessionPlan, Week } from "../../api/types";
import { replaced } from "./lists";

export interface SessionAt {
  readonly week: number;
  readonly session: number;
}

export interface ExerciseAt extends SessionAt {
  readonly exercise: number;
}

export function pathOf(at: SessionAt | ExerciseAt): string {
  const session = `weeks.${at.week}.sessions.${at.session}`;
  return "exercise" in at ? `${session}.exercises.${at.exercise}` : session;
}

export function sessionAt(block: Block, at: SessionAt): SessionPlan | undefined {
  return block.weeks[at.week]?.sessions[at.session];
}

export function withWeek(block: Block, at: number, change: (week: Week) => Week): Block {
  const week = block.weeks[at];
  return week ? { ...block, weeks: replaced(block.weeks, at, change(week)) } : block;
}

export function withSession(
  block: Block,
  at: SessionAt,
  change: (session: SessionPlan) => SessionPlan,
): Block {
  return withWeek(block, at.week, (week) => {
    const session = week.sessions[at.session];
    if (!session) return week;
    return { ...week, sessions: replaced(week.sessions, at.session, change(session)) };
  });
}

export function withExercise(
  block: Block,
  at: ExerciseAt,
  change: (exercise: ExercisePlan) => ExercisePlan,
): Block {
  return withSession(block, at, (session) => {
    const exercise = session.exercises[at.exercise];
    if (!exercise) return session;
    const exercises = replaced(session.exercises, at.exercise, change(exercise));
    return { ...session, exercises };
  });
}
