"""Where in a block something was found, in words for people and as a path for programs."""

from dataclasses import dataclass

from undercroft.domain.program.block import ExercisePlan, SessionPlan
from undercroft.domain.program.calendar import DAYS


@dataclass(frozen=True, slots=True)
class Place:
    """`at` are the places of week, session, exercise and set, as far down as is meant."""

    at: tuple[int, ...]
    where: str

    @property
    def path(self) -> str:
        names = ("weeks", "sessions", "exercises", "sets")
        return ".".join(f"{name}.{at}" for name, at in zip(names, self.at, strict=False))

    def session(self, s: int, session: SessionPlan) -> "Place":
        return Place((*self.at, s), f"{self.where}, {DAYS[session.day - 1]}")

    def exercise(self, e: int, plan: ExercisePlan) -> "Place":
        return Place((*self.at, e), f"{self.where}, exercise {e + 1} ({plan.exercise})")

    def set(self, n: int) -> "Place":
        return Place((*self.at, n), f"{self.where}, set {n + 1}")


def week_place(w: int) -> Place:
    return Place((w,), f"week {w + 1}")
