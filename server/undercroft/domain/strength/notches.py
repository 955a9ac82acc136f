"""The tracker in whole numbers, as a phone walks it without the server.

The gains of the tracker do not depend on what is reported, so the server works them out before and
a step needs look-ups and whole numbers only. `pwa/src/offline/notches.ts` is the same walk; the
vectors in `fixtures/notch-walks` hold the two together.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from undercroft.domain.strength.scale import PER_MILLE, TENTHS, at_n, quotient

Gain = tuple[int, int, int]
"""Per mille of a difference that go to level, form and tilt."""


@dataclass(frozen=True, slots=True)
class Rise:
    """How many notches a suggestion may rise from one set to the next, and in a session."""

    per_set: int
    in_all: int


@dataclass(frozen=True, slots=True)
class NotchTable:
    """The server's answers for one lift in one session; in tenths of a notch unless said.

    lift      whose maximum it is
    level     strength at the start of the session, drift included
    form      0: form is drawn anew in every session
    base      notch of the first entry of each set's ladder
    drift     from this session's level to the next one's
    kind      of each set that gives evidence, in plan order ("turn"): sets of a kind weigh alike
    at        of each turn, the n that its load is reckoned at (1 for a share of the maximum)
    gain      by `gain_key`: how many sets of each kind came before, and the kind of this one
    missed    the same, had no set of the sessions before been done; empty where it is no matter
    told      points that the sessions before tell of the level when done to plan
    less      per mille of the way from `gain` to `missed` when 0, 1 ... 10 tenths of them are told
    tells     points that this session tells after 0, 1, 2 ... sets
    offset    for n = 1 .. 15, from a load to the level that it speaks for
    lean      for n = 1 .. 15, what a tilt of 1 moves a load by
    gate      largest difference that is believed
    rise      what a suggestion may rise by, in notches
    hold      the coach wants the plan as written
    """

    lift: str
    level: int
    form: int
    base: int
    drift: int
    kind: tuple[int, ...]
    at: tuple[float, ...]
    gain: Mapping[str, Gain]
    missed: Mapping[str, Gain]
    told: int
    less: tuple[int, ...]
    tells: tuple[int, ...]
    offset: tuple[int, ...]
    lean: tuple[int, ...]
    gate: int
    rise: Rise
    hold: bool = False


@dataclass(frozen=True, slots=True)
class WalkState:
    """Where a walk stands: level and form in tenths of a notch, tilt per mille.

    tilt        counted from the tilt that the table's offsets hold
    told        points of the sessions before that the server did not know
    less        per mille of the way to the table's missed gains that follow from it
    from_level, from_tilt
                what the session began with
    allowed     notches that the next suggestion may lie above that
    done        sets of evidence so far, by kind
    wild        the last difference was beyond the gate
    """

    level: int
    form: int
    tilt: int
    told: int
    less: int
    from_level: int
    from_tilt: int
    allowed: int
    done: tuple[int, ...]
    wild: bool


def gain_key(done: Sequence[int], kind: int) -> str:
    """Key of a gain: evidence so far by kind, then the kind at hand, as in "1.2:1"."""
    return f"{'.'.join(str(count) for count in done)}:{kind}"


def begin(table: NotchTable) -> WalkState:
    """The walk at the start of a session, as the server knew the athlete."""
    return _start(table, table.level, 0, 0)


def carry(
    table: NotchTable, state: WalkState, known: WalkState, following: NotchTable
) -> WalkState:
    """The walk at the start of the next session, with what the server did not know of this one.

    `known` is the state of this session's walk from which the following table was worked out:
    `begin(table)` where no set of it had reached the server.
    """
    told = state.told + _tells(table, state) - known.told - _tells(table, known)
    level = following.level + state.level - known.level
    return _start(following, level, state.tilt - known.tilt, told)


def _start(table: NotchTable, level: int, tilt: int, told: int) -> WalkState:
    return WalkState(
        level=level,
        form=table.form,
        tilt=tilt,
        told=told,
        less=_less(table, told),
        from_level=level,
        from_tilt=tilt,
        allowed=0,
        done=(0,) * (max(table.kind, default=-1) + 1),
        wild=False,
    )


def _tells(table: NotchTable, state: WalkState) -> int:
    return table.tells[min(sum(state.done), len(table.tells) - 1)]


def _less(table: NotchTable, told: int) -> int:
    """Read off `less` at the share told, linear between its tenths."""
    last = len(table.less) - 1
    if told >= table.told:
        return table.less[last]
    place, rest = divmod(max(0, told) * last, table.told)
    low, high = table.less[place], table.less[place + 1]
    return low + quotient((high - low) * rest, table.told)


def difference(state: WalkState, table: NotchTable, place: int, n: float) -> int:
    """Tenths of a notch by which a set of n repetitions at that place beats what was expected."""
    leaning = quotient(state.tilt * at_n(table.lean, n), PER_MILLE)
    return place + at_n(table.offset, n) - state.level - state.form - leaning


def walk(state: WalkState, table: NotchTable, turn: int, place: int, n: float) -> WalkState:
    """One step: the evidence of a turn, done at a place on the scale for n = reps + reserve.

    A turn that was skipped is simply not walked. A set beyond the plan has a turn beyond it and
    weighs as the plan's last one; with no turn planned nothing moves.
    """
    if not table.kind:
        return state
    last = min(turn, len(table.kind) - 1)
    kind = table.kind[last]
    to_level, to_form, to_tilt = _gain(state, table, turn, kind)
    found = difference(state, table, place, n)
    held = min(max(found, -table.gate), table.gate)
    return replace(
        state,
        level=state.level + quotient(to_level * held, PER_MILLE),
        form=state.form + quotient(to_form * held, PER_MILLE),
        tilt=state.tilt + quotient(to_tilt * held, PER_MILLE),
        allowed=min(table.rise.in_all, rise(state, table, table.at[last]) + table.rise.per_set),
        done=(*state.done[:kind], state.done[kind] + 1, *state.done[kind + 1 :]),
        wild=found != held,
    )


def _gain(state: WalkState, table: NotchTable, turn: int, kind: int) -> Gain:
    """The gain of a turn; more sets than the plan has before it count as all that it has."""
    before = table.kind[:turn]
    key = gain_key([min(done, before.count(one)) for one, done in enumerate(state.done)], kind)
    planned = table.gain[key]
    missed = table.missed.get(key, planned)
    level, form, tilt = (
        one + quotient(state.less * (other - one), PER_MILLE)
        for one, other in zip(planned, missed, strict=True)
    )
    return level, form, tilt


def began(state: WalkState, table: NotchTable, n: float) -> int:
    """Notch at which the session began, for a load reckoned at n."""
    return _notch(table, state.from_level, state.from_tilt, n)


def wanted(state: WalkState, table: NotchTable, n: float) -> int:
    """Notch that the walk stands at, for a load reckoned at n, before any limit."""
    return _notch(table, state.level + state.form, state.tilt, n)


def rise(state: WalkState, table: NotchTable, n: float) -> int:
    """Notches from the session's beginning to the load suggested now; below 0 it falls freely."""
    return min(wanted(state, table, n) - began(state, table, n), state.allowed)


def _notch(table: NotchTable, strength: int, tilt: int, n: float) -> int:
    return quotient(strength + quotient(tilt * at_n(table.lean, n), PER_MILLE), TENTHS)
