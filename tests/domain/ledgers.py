"""Ledgers that tell one thing each, for the tests and for the vectors in fixtures/ledgers.

Run as a program it writes the vectors anew:  python -m tests.domain.ledgers
"""

import json
from collections.abc import Mapping, Sequence
from pathlib import Path
from random import Random
from typing import Any

from tests.domain.folded import plain_fold

from undercroft.domain.ledger import Entry, fold

FOLDER = Path(__file__).parents[2] / "fixtures" / "ledgers"
DAY = "2026-02-03T18:{:02d}:00+01:00"

Ledger = Sequence[Entry]


def id_of(number: int) -> str:
    """Ids rise with their numbers, as those of one phone do."""
    return f"019c1c38-a400-7000-8000-{number:012d}"


def entry(
    number: int,
    kind: str,
    body: Mapping[str, Any] | None = None,
    *,
    replaces: int | None = None,
    session: str | None = "w1.mon",
    set_: str | None = None,
    revision: int | None = 1,
    at: str | None = None,
) -> Entry:
    return Entry(
        id=id_of(number),
        kind=kind,
        at=at or DAY.format(number % 60),
        revision=revision,
        session=session,
        set=set_,
        replaces=None if replaces is None else id_of(replaces),
        body=body or {},
        n=number,
    )


def done(number: int, reps: int = 3, side: str | None = None, **fields: Any) -> Entry:
    body = {"load_kg": 92.5, "reps": reps, "rir": 4, **_told_of(side)}
    return entry(number, "set.done", body, **{"set_": "squat.1", **fields})


def cleared(number: int, side: str | None = None, **fields: Any) -> Entry:
    return entry(number, "set.cleared", _told_of(side), **{"set_": "squat.1", **fields})


def _told_of(side: str | None) -> dict[str, str]:
    return {"side": side} if side else {}


def swapped(number: int, exercise: str, to: str, **fields: Any) -> Entry:
    return entry(number, "exercise.swapped", {"exercise": exercise, "to": to}, **fields)


def loose(number: int, kind: str, body: Mapping[str, Any], **fields: Any) -> Entry:
    """An entry that belongs to no session."""
    return entry(number, kind, body, **{"session": None, "revision": None, **fields})


CASES: Mapping[str, Ledger] = {
    "an empty ledger": [],
    "a set that was done": [done(1)],
    "a set that was skipped": [
        entry(1, "set.skipped", {"why": "the band has snapped"}, set_="squat.1")
    ],
    "a correction counts once": [done(1), done(2, 5, replaces=1)],
    "a chain of corrections": [done(1), done(2, 5, replaces=1), done(3, 4, replaces=2)],
    "a correction that came first": [done(2, 5, replaces=1), done(1)],
    "a correction of what never came": [done(2, 5, replaces=1)],
    "the middle of a chain is missing": [done(1), done(3, 4, replaces=2)],
    "a correction by a clock that goes back": [done(7), done(2, 5, replaces=7)],
    "a cleared set is not done": [done(1), cleared(2, replaces=1)],
    "a cleared set is done again": [done(1), cleared(2, replaces=1), done(3, 2, replaces=2)],
    "a set done and then skipped after all": [
        done(1),
        entry(2, "set.skipped", {"why": "not finished"}, set_="squat.1", replaces=1),
    ],
    "two phones give two answers": [done(1), done(2, 5)],
    "two answers in the other order": [done(2, 5), done(1)],
    "two answers, one of them corrected": [done(1), done(2, 5), done(3, 4, replaces=1)],
    "two answers, the cleared one is greater": [done(1), cleared(2)],
    "two answers, the cleared one is less": [cleared(1), done(2)],
    "two phones correct the same entry": [
        done(1),
        done(2, 5, replaces=1),
        done(3, 4, replaces=1),
    ],
    "left and right of a one-sided set": [done(1, side="left"), done(2, 5, side="right")],
    "one side of a set, the other one open": [done(1, side="left")],
    "one side is corrected, the other one stays": [
        done(1, side="left"),
        done(2, 5, side="right"),
        done(3, 4, side="left", replaces=1),
    ],
    "one side is cleared, the other one stays": [
        done(1, side="left"),
        done(2, 5, side="right"),
        cleared(3, side="right", replaces=2),
    ],
    "both sides are cleared": [
        done(1, side="left"),
        done(2, 5, side="right"),
        cleared(3, side="right", replaces=2),
        cleared(4, side="left", replaces=1),
    ],
    "one side done and one skipped": [
        done(1, side="left"),
        entry(2, "set.skipped", {"why": "pain", "side": "right"}, set_="squat.1"),
    ],
    "two phones give two answers for one side": [
        done(1, side="left"),
        done(2, 5, side="right"),
        done(3, 4, side="right"),
    ],
    "one phone tells a side and one the whole set": [done(1), done(2, 5, side="left")],
    "the same entry three times": [done(1), done(1), done(1)],
    "an entry that replaces itself": [done(1, replaces=1)],
    "a circle of two": [done(1, replaces=2), done(2, 5, replaces=1)],
    "a circle of three and one that replaces a part of it": [
        done(1, replaces=3),
        done(2, 5, replaces=1),
        done(3, 4, replaces=2),
        done(4, 6, replaces=2),
    ],
    "a tail that leads into a circle": [
        done(1, replaces=2),
        done(2, 5, replaces=1),
        done(3, 4, replaces=1),
        done(9, 1, replaces=3),
    ],
    "nothing is replaced in another set": [done(1), done(2, set_="squat.2", replaces=1)],
    "nothing is replaced in another session": [done(1), done(2, session="w1.wed", replaces=1)],
    "nothing is replaced in another revision": [done(1), done(2, revision=2, replaces=1)],
    "a finish replaces no stop": [
        entry(1, "session.stopped", {"why": "pain"}),
        entry(2, "session.finished", {"rpe": 7, "minutes": 50}, replaces=1),
    ],
    "two sets of one exercise": [done(1), done(2, set_="squat.2"), done(3, set_="press.1")],
    "a whole session": [
        entry(1, "session.started"),
        done(2),
        done(3, set_="squat.2"),
        entry(4, "session.finished", {"rpe": 7.5, "minutes": 48, "comment": "steady"}),
    ],
    "a session that was opened is not begun": [entry(3, "session.opened")],
    "a session that was opened twice, then begun": [
        entry(2, "session.opened"),
        entry(1, "session.opened"),
        entry(3, "session.started"),
    ],
    "of several starts the first counts": [
        entry(5, "session.started"),
        entry(2, "session.started"),
    ],
    "a finish that was corrected": [
        entry(1, "session.finished", {"rpe": 9, "minutes": 48}),
        entry(2, "session.finished", {"rpe": 6, "minutes": 48}, replaces=1),
    ],
    "two finishes, the greater id counts": [
        entry(1, "session.finished", {"rpe": 9, "minutes": 48}),
        entry(2, "session.finished", {"rpe": 6, "minutes": 50}),
    ],
    "a set that was added and done": [
        entry(1, "set.added", {"exercise": "curl"}, set_="extra.1"),
        done(2, set_="extra.1"),
    ],
    "a set that was added and not done": [
        entry(1, "set.added", {"exercise": "curl"}, set_="extra.1")
    ],
    "an added set that was taken away": [
        entry(1, "set.added", {"exercise": "curl"}, set_="extra.1"),
        cleared(2, set_="extra.1", replaces=1),
    ],
    "an exercise that was swapped": [swapped(1, "squat", "box-squat"), done(2)],
    "a swap in the middle of its sets, one corrected after it": [
        done(1),
        swapped(2, "squat", "box-squat"),
        done(3, set_="squat.2"),
        done(4, reps=6, replaces=1),
        cleared(5, set_="squat.2", replaces=3),
        swapped(6, "squat", "squat"),
        done(7, set_="squat.2", replaces=5),
    ],
    "a swap that was changed": [
        swapped(1, "squat", "box-squat"),
        swapped(2, "squat", "split-squat", replaces=1),
    ],
    "a swap back is no swap": [
        swapped(1, "squat", "box-squat"),
        swapped(2, "squat", "squat", replaces=1),
    ],
    "two phones swap for different things": [
        swapped(1, "squat", "box-squat"),
        swapped(2, "squat", "split-squat"),
    ],
    "the same session from two revisions": [done(1), done(2, 5, revision=2)],
    "a session of no revision": [done(1, revision=None), done(2)],
    "wraps on and off, one corrected": [
        entry(1, "wrap.on", {"limb": "left arm"}),
        entry(2, "wrap.check", {"tightness": 6, "numb": False}),
        entry(3, "wrap.off", {"limb": "left arm", "seconds": 400}),
        entry(4, "wrap.off", {"limb": "left arm", "seconds": 395}, replaces=3),
        loose(5, "wrap.check", {"numb": True}),
    ],
    "pain in a session and outside": [
        entry(1, "pain.reported", {"where": "left knee", "level": 3}),
        loose(2, "pain.reported", {"where": "back", "level": 1.5}),
        entry(3, "pain.reported", {"where": "left knee", "level": 2}, replaces=1),
    ],
    "what belongs to no session": [
        loose(1, "readiness", {"score": 4}),
        loose(2, "body_mass", {"kg": 71.4}),
        loose(3, "body_mass", {"kg": 74.1}, replaces=2),
        loose(4, "max.tested", {"lift": "squat", "kg": 130}),
        loose(5, "after.check", {"hours": 24, "signs": []}),
        loose(6, "kit.changed", {"item": "plate 10", "change": {"count": 3}}),
        loose(7, "screening.answered", {"answers": {"heart": "no"}}),
        loose(8, "message", {"text": "Can we move Thursday?"}),
        loose(9, "message", {"text": "Or Friday."}),
    ],
    "a message that names a set's entry replaces it not": [
        done(1),
        loose(2, "message", {"text": "about that set"}, replaces=1),
    ],
    "a kind of the future": [entry(1, "sauna.taken", {"minutes": 12}), done(2)],
    "a clock that jumps changes nothing": [
        done(1, at="2031-01-01T00:00:00Z"),
        done(2, 5, replaces=1, at="1999-12-31T23:59:59-11:00"),
    ],
}


def at_random(seed: int, count: int = 60) -> list[Entry]:
    """Entries of two sessions with corrections, circles and duplicates as chance has it."""
    chance = Random(seed)
    entries = []
    for number in range(1, count + 1):
        kind = chance.choice(
            ["set.done"] * 6
            + ["set.skipped", "set.cleared", "set.cleared", "set.added", "exercise.swapped"]
            + ["session.started", "session.finished", "session.stopped", "body_mass", "wrap.off"]
        )
        replaces = chance.randint(1, count) if chance.random() < 0.5 else None
        entries.append(_at_random(chance, number, kind, replaces))
    repeated = entries + chance.sample(entries, count // 5)
    chance.shuffle(repeated)
    return repeated


def _at_random(chance: Random, number: int, kind: str, replaces: int | None) -> Entry:
    body: dict[str, Any] = {
        "set.done": {"reps": chance.randint(1, 9)},
        "set.skipped": {"why": "no time"},
        "set.added": {"exercise": chance.choice(["curl", "row"])},
        "exercise.swapped": {"exercise": "squat", "to": chance.choice(["squat", "box-squat"])},
        "session.finished": {"rpe": chance.randint(1, 10), "minutes": 50},
        "session.stopped": {"why": "pain"},
        "body_mass": {"kg": chance.randint(60, 90)},
        "wrap.off": {"limb": "left arm", "seconds": chance.randint(60, 900)},
    }.get(kind, {})
    return entry(
        number,
        kind,
        body,
        replaces=replaces,
        session=None if kind == "body_mass" else chance.choice(["w1.mon", "w1.wed"]),
        set_=chance.choice(["a", "b", "c"]) if kind.startswith("set.") else None,
        revision=chance.choice([1, 1, 1, 2, None]),
    )


def as_sent(one: Entry) -> dict[str, Any]:
    """The entry as a phone sends it."""
    return {
        "id": one.id,
        "v": one.v,
        "n": one.n,
        "kind": one.kind,
        "replaces": one.replaces,
        "at": one.at,
        "revision": one.revision,
        "session": one.session,
        "set": one.set,
        "body": dict(one.body),
    }


ORIGIN = "Invented; written by tests/domain/ledgers.py, the folds checked there by another way."
FORM = (
    "Each case: entries as phones send them, in an order that must not matter, and their fold. "
    "sessions: in the order of revision (null first) and key; opened_at and started_at: the `at` "
    "of the first, that with the least id; finished and stopped are the id that counts or null; "
    "sets: by key, what counts, with kind done or skipped (a cleared set is not there) and, where "
    "sides were told apart, the id that counts for each; added: exercise by key of an added set; "
    "swaps: by exercise, what was done; conflicts: keys of sets with two answers; wraps and pains: "
    "ids, rising. Beside them ids, rising, of what each list holds."
)


def vectors(cases: Mapping[str, Ledger]) -> dict[str, Any]:
    return {
        "origin": ORIGIN,
        "form": FORM,
        "cases": [
            {
                "name": name,
                "entries": [as_sent(one) for one in entries],
                "fold": plain_fold(fold(entries)),
            }
            for name, entries in cases.items()
        ],
    }


def files() -> dict[str, str]:
    """Name and text of each file of vectors."""
    random = {f"at random, seed {seed}": at_random(seed) for seed in range(1, 9)}
    return {
        "told.json": _text(vectors(CASES)),
        "at-random.json": _text(vectors(random)),
    }


def _text(data: dict[str, Any]) -> str:
    cases = ",\n".join(json.dumps(case, separators=(",", ":")) for case in data["cases"])
    head = json.dumps({key: data[key] for key in ("origin", "form")}, indent=1)[:-2]
    return f'{head},\n "cases": [\n{cases}\n]\n}}\n'


if __name__ == "__main__":
    for name, text in files().items():
        (FOLDER / name).write_text(text, encoding="utf-8")
