"""The index by session answers which sessions were begun, and under which revision, by itself.

Without it every line of every year is read for that.
"""

from peewee import Database, SqliteDatabase
from playhouse.migrate import SchemaMigrator

NAME = "entry_athlete_id_session_kind"
ROWS_FOR_EACH_PART = "1000000 20000 40 8 4 4"


def up(_: SchemaMigrator, db: Database) -> None:
    db.execute_sql(f"DROP INDEX {NAME}")
    db.execute_sql(f"CREATE INDEX {NAME} ON entry (athlete_id, session, kind, revision, status)")
    if isinstance(db, SqliteDatabase):
        row = ("entry", NAME, ROWS_FOR_EACH_PART)
        db.execute_sql("INSERT INTO sqlite_stat1 VALUES (?, ?, ?)", row)
        db.execute_sql("ANALYZE sqlite_schema")
