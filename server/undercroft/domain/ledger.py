"""The ledger: what the athlete did, folded from entries in any order of arrival.

An entry names what it replaces. Of the entries that answer one question (what became of this set,
how did this session end), those that none replaces are its heads. One head is the answer; with
several (two phones, both offline) the greatest id counts and the coach sees "two answers". Left and
right of a one-sided set are two questions. Entries that replace each other in a circle, which no
honest phone makes, replace nothing.
"""

from collections import defaultdict
from collections.abc import (
    Callable,
    Collection,
    Hashable,
    Iterable,
    Iterator,
    Mapping,
    Sequence,
)
from dataclasses import dataclass, field, replace
from typing import Any, TypeVar

K = TypeVar("K", bound=Hashable)

SessionKey = tuple[int | None, str]
"""Number of the revision it was done from (None: none), and the session's key in it."""

SET_ANSWERS = frozenset({"set.done", "set.skipped", "set.cleared"})
SET_KINDS = SET_ANSWERS | {"set.added"}
SIDES = ("left", "right")
WRAP_KINDS = frozenset({"wrap.on", "wrap.off", "wrap.check"})
SESSION_KINDS = frozenset({"session.started", "session.finished", "session.stopped"})
WORK_KINDS = SESSION_KINDS | SET_KINDS | WRAP_KINDS | {"exercise.swapped"}
"""Kinds by which a session is begun: from then on its sheet stays as it is."""

EVENTS: Mapping[str, str] = {
    "readiness": "readiness",
    "body_mass": "body_masses",
    "max.tested": "max_tests",
    "pain.reported": "pains",
    "wrap.on": "wraps",
    "wrap.off": "wraps",
    "wrap.check": "wraps",
    "after.check": "after_checks",
    "kit.changed": "kit_changes",
    "screening.answered": "screenings",
    "message": "messages",
}
"""Kinds that each stand for themselves, and the list of the ledger that they go to."""


@dataclass(frozen=True, slots=True)
class Entry:
    """One line of the ledger.

    `at` is data, what the phone's clock said (ISO 8601 with offset); order never comes from it.
    `position` is its place in the feed, 0 where it has none yet.
    """

    id: str
    kind: str
    at: str
    revision: int | None = None
    session: str | None = None
    set: str | None = None
    replaces: str | None = None
    body: Mapping[str, Any] = field(default_factory=dict)
    n: int = 0
    v: int = 1
    device: str = ""
    position: int = 0


@dataclass(frozen=True, slots=True)
class SetRecord:
    """What became of one set: `kind` is "done" or "skipped"; a cleared set has no record.

    `conflict`: two phones gave different answers. `added_to`: the exercise to which the athlete
    added this set, None for a set of the plan. `sides`: by "left" and "right", what became of each
    where they were told apart; the rest of the record is then the later one's. `first`: id of its
    first answer, which no correction changes.
    """

    kind: str
    body: Mapping[str, Any]
    at: str
    id: str
    conflict: bool
    added_to: str | None
    sides: Mapping[str, "SetRecord"] = field(default_factory=dict)
    first: str = ""

    def answers(self) -> tuple["SetRecord", ...]:
        """Each side's own record, or this one where the whole set was told at once."""
        return tuple(self.sides.values()) or (self,)


@dataclass(frozen=True, slots=True)
class Swap:
    """From the entry of that id on it was done another way; `why` as the phone said it."""

    id: str
    to: str
    why: str = ""


@dataclass(frozen=True, slots=True)
class SessionRecord:
    """What became of one session.

    opened_at: when the athlete first had it in front of them, which begins nothing.
    added: exercise by key of each set that the athlete added, done or not.
    swaps: by exercise, what was done instead in the end; swapped: all its swaps, in order.
    conflicts: keys of the sets with two answers, whichever counts.
    """

    opened_at: str | None
    started_at: str | None
    finished: Entry | None
    stopped: Entry | None
    sets: Mapping[str, SetRecord]
    added: Mapping[str, str]
    swaps: Mapping[str, str]
    conflicts: tuple[str, ...]
    wraps: tuple[Entry, ...]
    pains: tuple[Entry, ...]
    swapped: Mapping[str, tuple[Swap, ...]] = field(default_factory=dict)

    def done_as(self, line: str, exercise: str, answer: SetRecord) -> str:
        """As what a set was done: a swap counts for what is recorded after it."""
        swaps = self.swapped.get(line, self.swapped.get(exercise, ()))
        before = [swap.to for swap in swaps if swap.id < answer.first]
        return before[-1] if before else exercise


@dataclass(frozen=True, slots=True)
class Ledger:
    """Everything that was done; lists are in the order of ids."""

    sessions: Mapping[SessionKey, SessionRecord]
    readiness: tuple[Entry, ...] = ()
    body_masses: tuple[Entry, ...] = ()
    max_tests: tuple[Entry, ...] = ()
    pains: tuple[Entry, ...] = ()
    wraps: tuple[Entry, ...] = ()
    after_checks: tuple[Entry, ...] = ()
    kit_changes: tuple[Entry, ...] = ()
    screenings: tuple[Entry, ...] = ()
    messages: tuple[Entry, ...] = ()


def fold(entries: Iterable[Entry]) -> Ledger:
    """The state that the entries amount to, whatever their order and however often each came."""
    once = {entry.id: entry for entry in entries}.values()
    events = {name: tuple(found) for name, found in _events(once).items()}
    wraps = _grouped(events["wraps"], _session_key)
    pains = _grouped(events["pains"], _session_key)
    sessions = {
        key: _session(group, tuple(wraps.get(key, ())), tuple(pains.get(key, ())))
        for key, group in _grouped(once, _session_key).items()
        if key is not None
    }
    return Ledger(sessions=sessions, **events)


def heads(entries: Collection[Entry]) -> list[Entry]:
    """Entries that no other one of them replaces, in the order of ids."""
    if len(entries) == 1:
        return [*entries]
    circular = _circular(entries)
    replaced = {e.replaces for e in entries if e.replaces is not None and e.id not in circular}
    return sorted((e for e in entries if e.id not in replaced), key=_id)


def _session_key(entry: Entry) -> SessionKey | None:
    return None if entry.session is None else (entry.revision, entry.session)


def _session(
    entries: list[Entry], wraps: tuple[Entry, ...], pains: tuple[Entry, ...]
) -> SessionRecord:
    kinds = _grouped(entries, lambda e: e.kind)
    sets, added, conflicts = _sets([e for e in entries if e.kind in SET_KINDS])
    return SessionRecord(
        opened_at=_first_at(kinds.get("session.opened", ())),
        # Of several starts the first counts: the second phone only joined in.
        started_at=_first_at(kinds.get("session.started", ())),
        finished=_greatest(kinds.get("session.finished", ())),
        stopped=_greatest(kinds.get("session.stopped", ())),
        sets=sets,
        added=added,
        swaps=_swaps(kinds.get("exercise.swapped", ())),
        swapped=_swapped(kinds.get("exercise.swapped", ())),
        conflicts=conflicts,
        wraps=wraps,
        pains=pains,
    )


def _sets(
    entries: Iterable[Entry],
) -> tuple[dict[str, SetRecord], dict[str, str], tuple[str, ...]]:
    records: dict[str, SetRecord] = {}
    added: dict[str, str] = {}
    conflicts: list[str] = []
    for key, group in sorted(_grouped(entries, lambda e: e.set or "").items()):
        left = heads(group)
        additions = [e for e in left if e.kind == "set.added"]
        answers = [e for e in left if e.kind in SET_ANSWERS]
        if additions:
            added[key] = str(additions[-1].body.get("exercise", ""))
        by_side = _grouped(answers, _side)
        conflict = _differ(by_side)
        if conflict:
            conflicts.append(key)
        if record := _record(by_side, conflict, added.get(key), _firsts(group)):
            records[key] = record
    return records, added, tuple(conflicts)


def _side(entry: Entry) -> str | None:
    side = entry.body.get("side")
    return side if side in SIDES else None


def _differ(by_side: Mapping[str | None, Collection[Entry]]) -> bool:
    """Two answers for one side, or one for a side beside one for the whole set."""
    return any(len(group) > 1 for group in by_side.values()) or (
        None in by_side and len(by_side) > 1
    )


def _record(
    by_side: Mapping[str | None, Sequence[Entry]],
    conflict: bool,
    added_to: str | None,
    firsts: Mapping[str | None, str],
) -> SetRecord | None:
    last = {side: group[-1] for side, group in by_side.items()}
    left = sorted((e for e in last.values() if e.kind != "set.cleared"), key=_id)
    if not left:
        return None
    sides = {
        side: _answer(last[side], len(by_side[side]) > 1, added_to, firsts)
        for side in SIDES
        if last.get(side) in left
    }
    answer = _answer(left[-1], conflict, added_to, firsts)
    return replace(answer, sides=sides) if sides else answer


def _answer(
    entry: Entry, conflict: bool, added_to: str | None, firsts: Mapping[str | None, str]
) -> SetRecord:
    kind, first = entry.kind.removeprefix("set."), firsts.get(_side(entry), entry.id)
    return SetRecord(kind, entry.body, entry.at, entry.id, conflict, added_to, first=first)


def _firsts(entries: Iterable[Entry]) -> dict[str | None, str]:
    """By side, the first answer since the set was last cleared."""
    found: dict[str | None, str] = {}
    for entry in sorted((e for e in entries if e.kind in SET_ANSWERS), key=_id):
        if entry.kind == "set.cleared":
            found.pop(_side(entry), None)
        else:
            found.setdefault(_side(entry), entry.id)
    return found


def _swaps(entries: Iterable[Entry]) -> dict[str, str]:
    """A swap back to the exercise itself is no swap."""
    swaps = {}
    for exercise, group in sorted(
        _grouped(entries, lambda e: str(e.body.get("exercise", ""))).items()
    ):
        instead = str(heads(group)[-1].body.get("to", exercise))
        if instead != exercise:
            swaps[exercise] = instead
    return swaps


def _swapped(entries: Iterable[Entry]) -> dict[str, tuple[Swap, ...]]:
    found = _grouped(entries, lambda e: str(e.body.get("exercise", "")))
    return {exercise: tuple(map(_swap, sorted(heads(g), key=_id))) for exercise, g in found.items()}


def _swap(entry: Entry) -> Swap:
    return Swap(entry.id, str(entry.body.get("to", "")), str(entry.body.get("why", "")))


def _first_at(entries: Collection[Entry]) -> str | None:
    left = heads(entries)
    return left[0].at if left else None


def _greatest(entries: Collection[Entry]) -> Entry | None:
    left = heads(entries)
    return left[-1] if left else None


def _events(entries: Iterable[Entry]) -> dict[str, list[Entry]]:
    """Heads among the entries of each kind, gathered into the ledger's lists."""
    found: dict[str, list[Entry]] = {name: [] for name in EVENTS.values()}
    for kind, group in _grouped(entries, lambda e: e.kind).items():
        if kind in EVENTS:
            found[EVENTS[kind]] += heads(group)
    return {name: sorted(group, key=_id) for name, group in found.items()}


def _circular(entries: Collection[Entry]) -> set[str]:
    """Ids of entries that, followed from one to what it replaces, come back to themselves."""
    if all(e.replaces is None or e.replaces < e.id for e in entries):
        return set()
    replaces = {e.id: e.replaces for e in entries}
    walk_of: dict[str, str] = {}
    circular: set[str] = set()
    for start in replaces:
        path = list(_walk(start, replaces, walk_of))
        end = replaces[path[-1]] if path else None
        if end is not None and walk_of.get(end) == start:
            circular.update(path[path.index(end) :])
    return circular


def _walk(start: str, replaces: Mapping[str, str | None], walk_of: dict[str, str]) -> Iterator[str]:
    """From one entry to what it replaces, until the end or a place where some walk has been."""
    here: str | None = start
    while here is not None and here in replaces and here not in walk_of:
        walk_of[here] = start
        yield here
        here = replaces[here]


def _grouped(entries: Iterable[Entry], key: Callable[[Entry], K]) -> dict[K, list[Entry]]:
    groups: dict[K, list[Entry]] = defaultdict(list)
    for entry in entries:
        groups[key(entry)].append(entry)
    return groups


def _id(entry: Entry) -> str:
    return entry.id
