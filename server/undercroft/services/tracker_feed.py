"""What a phone and the desk see of the trackers: maxima with their band."""

from collections.abc import Collection
from dataclasses import dataclass
from datetime import date

from undercroft.domain.athlete import Athlete
from undercroft.domain.exercise import Catalogue
from undercroft.domain.sheet import LiftStanding
from undercroft.domain.strength import estimate
from undercroft.services import tracking
from undercroft.services.catalogues import catalogue_for
from undercroft.store.feed import keys_left, publish


@dataclass(frozen=True, slots=True)
class MaximumSeen:
    """A maximum as it stands, in kg with its 90 % band; `on` is the day of its last evidence."""

    lift: str
    name: str
    kg: float
    low_kg: float
    high_kg: float
    source: str
    on: date


def maxima_of(athlete_id: str, athlete: Athlete) -> list[MaximumSeen]:
    """Every lift that is known, by name."""
    standing = tracking.standing_now(athlete_id, athlete, {})
    names = catalogue_for(athlete_id)
    seen = (_seen(known, names) for known in standing.lifts.values())
    return sorted(seen, key=lambda one: one.name)


def publish_trackers(
    athlete_id: str, athlete: Athlete, lifts: Collection[str] | None = None
) -> None:
    """Put the maxima that moved into the feed, and withdraw those that are known no more.

    With lifts: of these and those that lean on them; else all.
    """
    known = maxima_of(athlete_id, athlete)
    moved = None if lifts is None else {*lifts, *_leaning_on(athlete, lifts)}
    for seen in known:
        if moved is None or seen.lift in moved:
            body = {
                "lift": seen.lift,
                "name": seen.name,
                "kg": seen.kg,
                "low_kg": seen.low_kg,
                "high_kg": seen.high_kg,
                "source": seen.source,
                "at": f"{seen.on.isoformat()}T00:00:00.000Z",
            }
            publish(athlete_id, "tracker", seen.lift, body)
    told = keys_left(athlete_id, "tracker", "tracker.withdrawn")
    for lift in sorted(told.difference(seen.lift for seen in known)):
        publish(athlete_id, "tracker.withdrawn", lift, {"lift": lift})


def _leaning_on(athlete: Athlete, lifts: Collection[str]) -> set[str]:
    """Lifts whose maximum is a share of one of these."""
    return {one.lift for one in athlete.leans if one.on_lift in lifts}


def _seen(known: LiftStanding, names: Catalogue) -> MaximumSeen:
    told = estimate(known.state, known.settings)
    name = names[known.lift].name if known.lift in names else known.lift
    return MaximumSeen(
        known.lift,
        name,
        round(told.kg, 1),
        round(told.low_kg, 1),
        round(told.high_kg, 1),
        known.source,
        date.fromordinal(int(known.state.at_days)),
    )
