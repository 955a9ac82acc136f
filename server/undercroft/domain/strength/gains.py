"""The tracker's gains, worked out before anything is reported.

They depend on which sets were done, not on how they went, and sets that weigh alike may stand for
each other. So gains are listed by how many sets of each kind came before: skipping any set leads to
another line of the list and not to another answer than the tracker's own.
"""

from collections.abc import Mapping, Sequence
from itertools import pairwise, product

import numpy as np

from undercroft.domain.strength.evidence import Weight
from undercroft.domain.strength.notches import Gain, gain_key
from undercroft.domain.strength.scale import PER_MILLE, to_tenths
from undercroft.domain.strength.tracker import Vector, gain_and_doubt

MOST_GAINS = 160
"""Lines of one list, above which the sets that weigh most alike are taken as one kind."""

SHARES = tuple(tenth / 10 for tenth in range(11))

Counts = tuple[int, ...]


def kinds_of(weights: Sequence[Weight]) -> tuple[tuple[int, ...], tuple[Weight, ...]]:
    """Which sets weigh alike: the kind of each set, and the weight of each kind."""
    groups: dict[Weight, list[int]] = {}
    for turn, weight in enumerate(weights):
        groups.setdefault(weight, []).append(turn)
    while len(_reachable(_numbered(groups), len(groups))) > MOST_GAINS:
        groups = _with_nearest_merged(groups)
    return _numbered(groups), tuple(groups)


def _numbered(groups: Mapping[Weight, list[int]]) -> tuple[int, ...]:
    by_turn = {turn: kind for kind, turns in enumerate(groups.values()) for turn in turns}
    return tuple(by_turn[turn] for turn in sorted(by_turn))


def _with_nearest_merged(groups: Mapping[Weight, list[int]]) -> dict[Weight, list[int]]:
    by_doubt = sorted(groups, key=lambda weight: (weight.variance, weight.lean))
    one, other = min(pairwise(by_doubt), key=lambda pair: pair[1].variance / pair[0].variance)
    turns = sorted(groups[one] + groups[other])
    part = len(groups[one]) / len(turns)
    both = Weight(
        part * one.lean + (1 - part) * other.lean,
        1 / (part / one.variance + (1 - part) / other.variance),
    )
    rest = {weight: kept for weight, kept in groups.items() if weight not in (one, other)}
    return dict(sorted({**rest, both: turns}.items(), key=lambda group: group[1][0]))


def planned_counts(kind: Sequence[int], kinds: int) -> Counts:
    """How many sets of each kind."""
    return tuple(kind.count(one) for one in range(kinds))


def _up_to(counts: Counts) -> list[Counts]:
    return list(product(*(range(count + 1) for count in counts)))


def _reachable(kind: Sequence[int], kinds: int) -> list[tuple[Counts, int]]:
    """Every (sets before by kind, kind at hand) that can come about, one added set included."""
    turns = enumerate((*kind, *kind[-1:]))
    pairs = (
        (done, one) for turn, one in turns for done in _up_to(planned_counts(kind[:turn], kinds))
    )
    return list(dict.fromkeys(pairs))


def doubts_by_count(
    covariance: Vector, kind: Sequence[int], weights: Sequence[Weight]
) -> dict[Counts, Vector]:
    """Covariance (3 x 3) after so many sets of each kind; their order does not matter."""
    doubts: dict[Counts, Vector] = {}
    for done in _up_to(planned_counts(kind, len(weights))):
        last = next((one for one, count in enumerate(done) if count), None)
        if last is None:
            doubts[done] = covariance
        else:
            fewer = (*done[:last], done[last] - 1, *done[last + 1 :])
            doubts[done] = gain_and_doubt(doubts[fewer], weights[last])[1]
    return doubts


def gains_by_count(
    kind: Sequence[int], weights: Sequence[Weight], doubts: Mapping[Counts, Vector]
) -> dict[str, Gain]:
    """Gains in per mille, under the key of what came before and the kind at hand."""
    gains: dict[str, Gain] = {}
    for done, one in _reachable(kind, len(weights)):
        gain, _ = gain_and_doubt(doubts[done], weights[one])
        level, form, tilt = (to_tenths(float(part)) for part in gain)
        gains[gain_key(done, one)] = (level, form, tilt)
    return gains


def points_told(weights: Sequence[Weight], form_sd: float) -> tuple[int, ...]:
    """What a session tells of the level after 0, 1, 2 ... sets: 1 / variance, as whole points.

    The sets' errors average out; the form of the day, which they share, does not.
    """
    if not weights:
        return (0,)
    precision = sum(1 / weight.variance for weight in weights) / len(weights)
    counts = range(1, len(weights) + 1)
    return (0, *(round(1 / (1 / (count * precision) + form_sd**2)) for count in counts))


def less_by_share(planned: Vector, missed: Vector, weight: Weight) -> tuple[int, ...]:
    """Way from planned to missed gains, per mille, when 0, 0.1 ... 1 of what was to come is told.

    What is told adds up as the inverse of a covariance does; the way is that of the first gain.
    """
    least, most = np.linalg.pinv(missed), np.linalg.pinv(planned)
    firsts = [
        float(
            gain_and_doubt(np.asarray(np.linalg.pinv(least + share * (most - least))), weight)[0][0]
        )
        for share in SHARES
    ]
    span = firsts[0] - firsts[-1]
    if span <= 1 / PER_MILLE:
        return tuple(to_tenths(1 - share) for share in SHARES)
    return tuple(to_tenths((first - firsts[-1]) / span) for first in firsts)
