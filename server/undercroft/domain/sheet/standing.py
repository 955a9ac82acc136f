"""What is known of an athlete's strength: a tracker for each lift, and what was done last."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date

from undercroft.domain.athlete import Athlete, Experience, Lean, Maximum, MaximumKind
from undercroft.domain.strength import (
    DEFAULT,
    Evidence,
    StrengthSettings,
    TestedMax,
    TrackerState,
    advance,
    novice,
    start_from_guess,
    start_from_other_lift,
    take_session,
    trained,
)

GUESS_DOUBT = 0.10
"""Relative doubt of a coach's guess that states none: our own choice."""

LEAN_DOUBT = 0.10
"""Added relative doubt of a maximum that leans on another lift: our own choice."""


@dataclass(frozen=True, slots=True)
class LiftStanding:
    """The tracker's state for one lift, and in words what it rests on."""

    lift: str
    state: TrackerState
    settings: StrengthSettings
    source: str


@dataclass(frozen=True, slots=True)
class DoneSession:
    """What a session told of one lift: its day and the evidence in plan order."""

    on: date
    evidence: tuple[Evidence, ...]


@dataclass(frozen=True, slots=True)
class Standing:
    """`lifts` by lift; `last_kg` by exercise: the load of its first set when it was last done."""

    lifts: Mapping[str, LiftStanding] = field(default_factory=dict)
    last_kg: Mapping[str, float] = field(default_factory=dict)


def settings_for(athlete: Athlete) -> StrengthSettings:
    """The tracker's settings for this athlete's experience."""
    if athlete.experience is Experience.NOVICE:
        return novice()
    return trained() if athlete.experience is Experience.TRAINED else DEFAULT


def standing_of(
    athlete: Athlete,
    done: Mapping[str, Sequence[DoneSession]] | None = None,
    last_kg: Mapping[str, float] | None = None,
) -> Standing:
    """Every lift with a known maximum or evidence; `done` holds sessions in order, by lift."""
    settings = settings_for(athlete)
    told = done or {}
    lifts = dict.fromkeys([m.lift for m in athlete.maxima] + list(told))
    own = {
        lift: known
        for lift in lifts
        if (known := lift_standing(athlete, lift, told.get(lift, ()), settings)) is not None
    }
    return Standing(with_leans(own, athlete, settings), last_kg or {})


def with_leans(
    own: Mapping[str, LiftStanding], athlete: Athlete, settings: StrengthSettings
) -> dict[str, LiftStanding]:
    """The lifts with evidence of their own, and those that lean on one of them."""
    leaning = {
        lean.lift: _leaning(own[lean.on_lift], lean, settings)
        for lean in athlete.leans
        if lean.lift not in own and lean.on_lift in own
    }
    return {**leaning, **own}


def lift_standing(
    athlete: Athlete, lift: str, done: Sequence[DoneSession], settings: StrengthSettings
) -> LiftStanding | None:
    """The lift's maxima and sessions in order of their day; None where nothing tells."""
    known: LiftStanding | None = None
    after: date | None = None
    for session in done:
        known = with_maxima(known, athlete, lift, settings, after=after, through=session.on)
        if session.evidence:
            state = None if known is None else known.state
            steps = take_session(state, session.on.toordinal(), session.evidence, settings)
            words = f"sets up to {session.on:%-d %B %Y}"
            known = LiftStanding(lift, steps[-1].state, settings, words)
        after = session.on
    return with_maxima(known, athlete, lift, settings, after=after, through=None)


def with_maxima(
    known: LiftStanding | None,
    athlete: Athlete,
    lift: str,
    settings: StrengthSettings,
    after: date | None,
    through: date | None,
) -> LiftStanding | None:
    """What is known, with the athlete's maxima of the lift after one day and up to another."""
    for maximum in sorted(athlete.maxima, key=lambda maximum: maximum.on):
        late = through is not None and maximum.on > through
        early = after is not None and maximum.on <= after
        if maximum.lift == lift and not late and not early:
            state = _take_maximum(None if known is None else known.state, maximum, settings)
            known = LiftStanding(lift, state, settings, _words(maximum))
    return known


def _take_maximum(
    state: TrackerState | None, maximum: Maximum, settings: StrengthSettings
) -> TrackerState:
    """A test is evidence; a guess is the coach's word and begins the estimate anew."""
    if maximum.kind is MaximumKind.GUESSED:
        return guessed_state(maximum, settings)
    day = maximum.on.toordinal()
    return take_session(state, day, (TestedMax(maximum.kg),), settings)[-1].state


def guessed_state(maximum: Maximum, settings: StrengthSettings) -> TrackerState:
    """The tracker's state on a coach's word alone."""
    doubt = maximum.doubt_percent / 100 if maximum.doubt_percent else GUESS_DOUBT
    return start_from_guess(maximum.kg, doubt, maximum.on.toordinal(), settings)


def _words(maximum: Maximum) -> str:
    verb = "tested" if maximum.kind is MaximumKind.TESTED else "guessed"
    return f"{verb} on {maximum.on:%-d %B %Y}"


def _leaning(on: LiftStanding, lean: Lean, settings: StrengthSettings) -> LiftStanding:
    state = start_from_other_lift(on.state, lean.ratio, LEAN_DOUBT, on.state.at_days, settings)
    return LiftStanding(lean.lift, state, settings, f"{lean.ratio:g} × {on.lift}")


def on_day(standing: LiftStanding, day: date) -> TrackerState:
    """The tracker's state on a day to come."""
    return advance(standing.state, day.toordinal(), standing.settings)
