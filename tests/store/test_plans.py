"""How SQLite finds things: never by reading a whole ledger, however long it has grown."""

import re
import sqlite3
from collections.abc import Iterator
from contextlib import closing, contextmanager
from pathlib import Path

from flask import Flask
from tests.people import Clock, enlist

from undercroft.store import database

WHOLE = re.compile(r"^SCAN (?!json_each )|\(athlete_id=\?\)$|\(athlete_id=\? AND position>\?\)$")
"""A plan that reads a table from end to end, or all of an athlete's lines; a list that was asked
for is no table."""


@contextmanager
def traced() -> Iterator[set[str]]:
    """Every statement that is executed on this thread's connection, with its values in it."""
    said: set[str] = set()
    database.connect()
    connection = database.database.connection()
    connection.set_trace_callback(said.add)
    try:
        yield said
    finally:
        connection.set_trace_callback(None)
        database.disconnect()


def plans(path: Path, statement: str) -> list[str]:
    with closing(sqlite3.connect(path)) as connection:
        return [row[3] for row in connection.execute(f"EXPLAIN QUERY PLAN {statement}")]


def test_an_exchange_reads_no_table_from_end_to_end(
    sqlite: Path, sqlite_app: Flask, clock: Clock
) -> None:
    coach = enlist(sqlite_app, clock, "Ottilie Brandt", "ottilie@example.org")
    phone = coach.pairs_phone(coach.adds_athlete("Runa Falk"))
    other = coach.pairs_phone(phone.athlete_id)
    phone.syncs(*phone.writes.many(3))
    with traced() as statements:
        entry = phone.writes.done("squat.1")
        phone.syncs(entry, {**entry, "body": {}}, phone.writes.done("squat.2"))
        other.syncs()
        (held,) = coach.held(phone.athlete_id)
        coach.post(f"/desk/athletes/{phone.athlete_id}/held/{held['position']}/accept")
    asked = [s for s in statements if re.search(r"\b(entry|change)\b", s) and "INSERT" not in s]
    assert len(asked) >= 6
    long = {
        (statement, plan)
        for statement in asked
        for plan in plans(sqlite, statement)
        if WHOLE.search(plan)
    }
    assert not long, "\n".join(f"{statement}\n    {plan}" for statement, plan in long)


def test_an_index_alone_tells_which_sessions_were_begun(
    sqlite: Path, sqlite_app: Flask, clock: Clock
) -> None:
    coach = enlist(sqlite_app, clock, "Ottilie Brandt", "ottilie@example.org")
    phone = coach.pairs_phone(coach.adds_athlete("Runa Falk"))
    phone.syncs(*phone.writes.many(3))
    with traced() as statements:
        coach.get(f"/desk/athletes/{phone.athlete_id}/results")
    (begun, *_) = [s for s in statements if "MIN(position)" in s]
    assert any("USING COVERING INDEX entry_athlete" in plan for plan in plans(sqlite, begun))
