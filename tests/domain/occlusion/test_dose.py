"""Wear and repetitions, read off the ledger's entries."""

import pytest

from undercroft.domain.ledger import Entry, fold
from undercroft.domain.occlusion import Site, doses_of, sites_of, wears_of, worn_issues
from undercroft.domain.occlusion.site import ALL_SITES
from undercroft.domain.program.block import ExercisePlan, SessionPlan, SetPlan
from undercroft.domain.program.methods import Limb, Method, OcclusionRule, Restriction, Side
from undercroft.domain.program.wish import OfMaximum

LEFT, RIGHT = Site(Limb.THIGH, Side.LEFT), Site(Limb.THIGH, Side.RIGHT)


def entry(n: int, kind: str, at: str, key: str | None = None, **body: object) -> Entry:
    when = f"2026-03-02T18:{at}+01:00"
    return Entry(f"{n:04}", kind, when, 1, "mon", key, None, body)


def plan(method: Method = Method.OCCLUSION) -> SessionPlan:
    rule = OcclusionRule(Limb.THIGH, Restriction.WRAP)
    sets = tuple(SetPlan(key, OfMaximum(30), 15) for key in ("a", "b"))
    return SessionPlan(
        "mon", "Monday", 1, (ExercisePlan("e1", "leg-extension", method, sets, details=rule),)
    )


@pytest.mark.parametrize(
    ("text", "sites"),
    [
        ("left-thigh", {LEFT}),
        ("thigh", {LEFT, RIGHT}),
        ("right-upper-arm", {Site(Limb.UPPER_ARM, Side.RIGHT)}),
        ("the bad one", ALL_SITES),
        ("", ALL_SITES),
    ],
)
def test_a_limb_that_nobody_knows_counts_for_every_limb(text, sites):
    assert sites_of(text) == sites


def test_wear_is_what_the_phone_counted_not_what_its_clock_jumped_to():
    entries = [
        entry(1, "wrap.on", "00:00", limb="left-thigh"),
        entry(2, "wrap.off", "59:00", limb="left-thigh", seconds=390),
    ]
    (wear,) = wears_of(entries)
    assert (wear.site, wear.seconds, wear.closed) == (LEFT, 390, True)


def test_a_wrap_whose_end_is_missing_counts_up_to_the_limit():
    twice = [entry(1, "wrap.on", "00:00", limb="left-thigh"),
             entry(2, "wrap.on", "30:00", limb="left-thigh")]  # fmt: skip
    assert [(w.seconds, w.closed) for w in wears_of(twice)] == [(900, False), (900, False)]
    assert [issue.key for _, issue in worn_issues(wears_of(twice[:1]))] == ["wear-open"]


def test_an_end_without_a_start_counts_its_seconds():
    (wear,) = wears_of([entry(1, "wrap.off", "10:00", limb="left-thigh", seconds=300)])
    assert (wear.seconds, wear.on_at.minute) == (300, 5)


def test_long_wear_and_short_breaks_are_told_limb_by_limb():
    entries = [
        entry(1, "wrap.on", "00:00", limb="thigh"),
        entry(2, "wrap.off", "11:00", limb="left-thigh", seconds=660),
        entry(3, "wrap.off", "16:00", limb="right-thigh", seconds=960),
        entry(4, "wrap.on", "13:59", limb="left-thigh"),
        entry(5, "wrap.off", "15:00", limb="left-thigh", seconds=61),
        entry(6, "wrap.on", "18:00", limb="left-thigh"),
        entry(7, "wrap.off", "19:00", limb="left-thigh", seconds=60),
    ]
    found = [(str(site), i.key, i.severity.value) for site, i in worn_issues(wears_of(entries))]
    assert found == [
        ("left-thigh", "wear", "warn"),
        ("left-thigh", "break", "stop"),
        ("right-thigh", "wear", "stop"),
    ]


def test_wraps_that_overlap_leave_no_break():
    entries = [
        entry(1, "wrap.on", "00:00", limb="left-thigh"),
        entry(2, "wrap.off", "05:00", limb="left-thigh", seconds=300),
        entry(3, "wrap.on", "04:00", limb="left-thigh"),
        entry(4, "wrap.off", "06:00", limb="left-thigh", seconds=120),
    ]
    ((_, issue),) = worn_issues(wears_of(entries))
    assert issue.what == "wraps off for 0:00 min between exercises"


def test_a_session_gives_wear_and_repetitions_by_limb():
    entries = [
        entry(1, "session.started", "00:00"),
        entry(2, "wrap.on", "05:00", limb="left-thigh"),
        entry(3, "set.done", "07:00", "a", reps=30, side="left"),
        entry(4, "set.done", "08:00", "b", reps=15),
        entry(5, "wrap.off", "09:00", limb="left-thigh", seconds=240),
        entry(6, "set.added", "10:00", "c", exercise="e1"),
        entry(7, "set.done", "10:30", "c", reps=12, side="right"),
        entry(8, "set.done", "11:00", "z", reps=99),
    ]
    record = fold(entries).sessions[1, "mon"]
    found = {str(d.site): (d.seconds, d.reps) for d in doses_of(plan(), record)}
    assert found == {"left-thigh": (240, 45), "right-thigh": (0, 27)}
    assert doses_of(plan(), record)[0].on.isoformat() == "2026-03-02"


def test_sets_without_a_wrap_are_no_dose():
    entries = [entry(1, "set.done", "07:00", "a", reps=30), entry(2, "set.skipped", "08:00", "b")]
    record = fold(entries).sessions[1, "mon"]
    assert doses_of(plan(Method.STRAIGHT), record) == ()
    assert {d.reps for d in doses_of(plan(), record)} == {30}
