"""What is known of a lift: maxima and sessions, in the order of their days."""

from datetime import date

import pytest

from undercroft.domain.athlete import Athlete, Experience, Maximum, MaximumKind
from undercroft.domain.sheet import DoneSession, settings_for, standing_of
from undercroft.domain.strength import (
    Evidence,
    PlannedSet,
    SetDone,
    StrengthSettings,
    estimate,
    novice,
)
from undercroft.domain.trend import trend

LIFT = "back-squat"


def maximum(kg: float, day: str, kind: MaximumKind = MaximumKind.TESTED) -> Maximum:
    return Maximum(LIFT, kg, kind, date.fromisoformat(day))


def athlete(*maxima: Maximum) -> Athlete:
    return Athlete(key="a", name="A", maxima=maxima)


def done(day: str, load_kg: float, rir: float = 2) -> DoneSession:
    evidence: tuple[Evidence, ...] = (SetDone(load_kg, 5, rir, PlannedSet(5, 2)),)
    return DoneSession(date.fromisoformat(day), evidence)


def known_kg(person: Athlete, *sessions: DoneSession) -> float:
    standing = standing_of(person, {LIFT: sessions}).lifts[LIFT]
    return estimate(standing.state, standing.settings).kg


def test_a_tested_maximum_is_the_maximum() -> None:
    assert known_kg(athlete(maximum(140, "2026-10-01"))) == pytest.approx(140)


def test_nothing_is_known_of_a_lift_without_evidence() -> None:
    assert standing_of(athlete()).lifts == {}


def test_a_better_session_raises_the_maximum_and_a_worse_one_lowers_it() -> None:
    """100 kg for five with two left is a 7RM, 83 %: a maximum of 120.5 (handbook chart, seen)."""
    person = athlete(maximum(120.5, "2026-10-01"))
    as_expected = known_kg(person, done("2026-10-08", 100))
    assert known_kg(person, done("2026-10-08", 105)) > as_expected
    assert known_kg(person, done("2026-10-08", 95)) < as_expected
    assert as_expected == pytest.approx(120.5, rel=0.005)


def test_a_later_guess_begins_the_estimate_anew() -> None:
    person = athlete(maximum(140, "2026-10-01"), maximum(120, "2026-10-20", MaximumKind.GUESSED))
    assert known_kg(person, done("2026-10-08", 130)) == pytest.approx(120)


def test_a_test_after_a_session_is_evidence_beside_it() -> None:
    person = athlete(maximum(140, "2026-10-01"), maximum(150, "2026-10-20"))
    assert 140 < known_kg(person, done("2026-10-08", 116)) < 150


def test_a_session_alone_is_enough_to_begin_with() -> None:
    assert known_kg(athlete(), done("2026-10-08", 100)) == pytest.approx(120.5, rel=0.005)


def test_experience_decides_how_fast_strength_may_move() -> None:
    kind: type[StrengthSettings] = StrengthSettings
    assert settings_for(athlete()) == kind()
    assert settings_for(Athlete(key="n", name="N", experience=Experience.NOVICE)) == novice()


def test_a_trend_has_a_point_for_each_maximum_and_each_telling_session() -> None:
    person = athlete(maximum(120, "2026-10-01"), maximum(130, "2026-10-30", MaximumKind.GUESSED))
    points = trend(
        person,
        LIFT,
        [done("2026-10-08", 100), done("2026-10-15", 103), DoneSession(date(2026, 10, 16), ())],
        settings_for(person),
    )
    assert [(str(p.on), p.source) for p in points] == [
        ("2026-10-01", "test"),
        ("2026-10-08", "sets"),
        ("2026-10-15", "sets"),
        ("2026-10-30", "guess"),
    ]


def test_the_smoothed_line_ends_where_the_known_one_does() -> None:
    person = athlete(maximum(120, "2026-10-01"))
    points = trend(person, LIFT, [done("2026-10-08", 104)], settings_for(person))
    assert points[-1].smoothed.kg == pytest.approx(points[-1].known.kg)
    assert points[0].smoothed.kg > points[0].known.kg
