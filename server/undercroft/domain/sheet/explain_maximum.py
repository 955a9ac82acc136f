"""The maximum behind a wish in lines: where it is from, the tracker's state, its way to the day."""

from collections.abc import Iterator

from undercroft.domain.sheet.day import Day, full_strength, maximum_on
from undercroft.domain.sheet.standing import on_day
from undercroft.domain.strength import TrackerState, estimate
from undercroft.domain.strength.reserve import CENTRE, FEWEST, lean

DAYS_A_WEEK = 7


def maximum_lines(day: Day, lift: str) -> Iterator[str]:
    """From what was tested, guessed or done to the maximum on the day."""
    known, expected, used = day.lift(lift), maximum_on(day, lift), full_strength(day, lift)
    if known is None or expected is None or used is None:
        yield f"{day.catalogue[lift].name.lower()}: nothing known"
        return
    then = estimate(known.state, known.settings)
    yield f"{day.catalogue[lift].name.lower()}, {known.source}: {then.kg:.2f} kg"
    yield _state(known.state)
    state = on_day(known, day.on)
    weeks = (state.at_days - known.state.at_days) / DAYS_A_WEEK
    drift = state.level - known.state.level
    most = known.settings.trained_gap_weeks
    counted = f", of which {most:g} count," if weeks > most else ""
    yield (
        f"{weeks:.1f} weeks to {day.on:%-d %B %Y}{counted} add {drift:.2%}: {expected.kg:.2f} kg, "
        f"90 % from {expected.low_kg:.1f} to {expected.high_kg:.1f}"
    )
    if lift in day.tables:
        yield f"on the scale of tenths of a notch that is {used:.2f} kg, which the loads go by"


def _state(state: TrackerState) -> str:
    return (
        f"tracker: level {state.level:.4f}, tilt {state.tilt:+.4f}; the maximum is e to "
        f"(level + tilt × {lean(FEWEST):.4f}), where {lean(FEWEST):.4f} is -ln of the share at "
        f"{CENTRE} repetitions"
    )
