"""Patterns of sets that a coach can begin with: the first exposures, then the protocols."""

from collections.abc import Sequence
from dataclasses import dataclass

from undercroft.domain.occlusion.ladder import FIRST, SECOND, THIRD, Rung
from undercroft.domain.occlusion.protocol import PROTOCOLS, Protocol, expected_in
from undercroft.domain.occlusion.settings import LIMITS
from undercroft.domain.occlusion.work import WorkSet


@dataclass(frozen=True, slots=True)
class PatternSet:
    """Repetitions aimed at; `to_failure`: on past them until none succeeds."""

    reps: int
    to_failure: bool = False


@dataclass(frozen=True, slots=True)
class Pattern:
    """Sets with rests in seconds and a load in % of the maximum.

    most_tightness  where the pattern keeps a wrap loose, None where the coach's figure stands
    both_at_once    false where one limb has to follow the other
    """

    key: str
    name: str
    sets: tuple[PatternSet, ...]
    rest_s: tuple[int, int]
    load_percent: float
    most_tightness: int | None = None
    both_at_once: bool = True


def aims(sets: Sequence[WorkSet]) -> tuple[int, ...]:
    """Repetitions to aim at; a set to failure without an aim gets the mean of the studies."""
    return tuple(
        round(expected_in(place).mean) if one.reps is None else one.reps
        for place, one in enumerate(sets)
    )


def _of_rung(key: str, name: str, rung: Rung) -> Pattern:
    return Pattern(
        key=key,
        name=name,
        sets=tuple(PatternSet(reps) for reps in rung.reps),
        rest_s=(LIMITS.rest_least_s, LIMITS.rest_most_s),
        load_percent=rung.load_percent,
        most_tightness=rung.most_tightness,
        both_at_once=rung.both_at_once,
    )


def _of_protocol(protocol: Protocol) -> Pattern:
    """With the middle of its loads: our own choice."""
    low, high = protocol.load_percent
    pairs = zip(aims(protocol.sets), protocol.sets, strict=True)
    return Pattern(
        key=protocol.key,
        name=protocol.name,
        sets=tuple(PatternSet(reps, one.to_failure) for reps, one in pairs),
        rest_s=protocol.rest_s,
        load_percent=(low + high) / 2,
    )


PATTERNS = (
    _of_rung("first", "first exposure", FIRST),
    _of_rung("second", "second exposure", SECOND),
    _of_rung("third", "third and fourth exposure", THIRD),
    *(_of_protocol(protocol) for protocol in PROTOCOLS),
)
