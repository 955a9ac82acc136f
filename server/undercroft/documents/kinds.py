"""Every kind of entry: what it must belong to, and what its body may hold.

A field that is not named here makes the entry held.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from enum import IntEnum
from types import MappingProxyType

from undercroft.documents.fields import KEY_PATTERN
from undercroft.documents.rules import (
    Rule,
    free_object,
    halves,
    many,
    matching,
    nullable,
    number,
    one_of,
    text,
    truth,
    whole,
)

KEY = matching(KEY_PATTERN.strip("^$"), "a key: lower-case letters, digits, dots and dashes")
COMMENT = text(2000)
WHY = text(500)
LIMB = text(40)
PAIN = halves(0, 10)
SIDE = one_of("left", "right")
KG = nullable(number(0, 1000, "kg"))


class Belongs(IntEnum):
    """What an entry must name: nothing, its session, or its session and set."""

    NOWHERE = 0
    SESSION = 1
    SET = 2


@dataclass(frozen=True, slots=True)
class Kind:
    """`rules` by field; `required` are the fields that may not be missing."""

    belongs: Belongs
    rules: Mapping[str, Rule]
    required: frozenset[str]


def _kind(belongs: Belongs, **body: Rule) -> Kind:
    """Fields with a name that ends in an underscore may be missing."""
    rules = {name.rstrip("_"): rule for name, rule in body.items()}
    required = frozenset(name for name in body if not name.endswith("_"))
    return Kind(belongs, MappingProxyType(rules), required)


_NOWHERE, _SESSION, _SET = Belongs

KINDS: Mapping[str, Kind] = MappingProxyType(
    {
        "session.opened": _kind(_SESSION),
        "session.started": _kind(_SESSION),
        "session.finished": _kind(
            _SESSION, rpe=halves(0, 10), minutes=whole(0, 1440, "minutes"), comment_=COMMENT
        ),
        "session.stopped": _kind(_SESSION, why=WHY, signs_=many(text(40), 40), comment_=COMMENT),
        "set.done": _kind(
            _SET,
            load_kg_=KG,
            reps_=nullable(whole(0, 1000, "repetitions")),
            rir_=nullable(halves(0, 10)),
            to_failure_=truth(),
            velocities_m_s_=many(number(0, 10, "m/s"), 100),
            quality_=whole(1, 5),
            seconds_=number(0, 7200, "s"),
            distance_m_=number(0, 100_000, "m"),
            side_=SIDE,
            blocks_=many(whole(0, 1000), 100),
            tightness_=halves(0, 10),
            pain_=PAIN,
        ),
        "set.skipped": _kind(_SET, why=WHY, side_=SIDE),
        "set.cleared": _kind(_SET, side_=SIDE),
        "set.added": _kind(_SET, exercise=KEY),
        "exercise.swapped": _kind(
            _SESSION, exercise=KEY, to=KEY, missing_=text(80), why_=text(200)
        ),
        "wrap.on": _kind(_NOWHERE, limb=LIMB),
        "wrap.off": _kind(_NOWHERE, limb=LIMB, seconds=number(0, 86_400, "s")),
        "wrap.check": _kind(_NOWHERE, tightness_=halves(0, 10), numb=truth()),
        "after.check": _kind(_NOWHERE, hours=one_of(24, 48, 72), signs=many(text(200), 40)),
        "readiness": _kind(_NOWHERE, score=whole(1, 5), comment_=COMMENT),
        "body_mass": _kind(_NOWHERE, kg=number(20, 400, "kg")),
        "max.tested": _kind(_NOWHERE, lift=KEY, kg=number(0, 1000, "kg"), conditions_=text(500)),
        "kit.changed": _kind(_NOWHERE, item=text(200), change=free_object()),
        "screening.answered": _kind(_NOWHERE, answers=free_object()),
        "pain.reported": _kind(_NOWHERE, where=text(200), level=PAIN, comment_=COMMENT),
        "message": _kind(_NOWHERE, text=text(4000)),
    }
)
