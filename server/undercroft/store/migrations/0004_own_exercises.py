"""Exercises of a coach's own, and under a key of the catalogue own cues for it."""

from peewee import Database, SqliteDatabase
from playhouse.migrate import SchemaMigrator

STATEMENTS = (
    """CREATE TABLE own_exercise (
        coach_id TEXT NOT NULL REFERENCES coach(id) ON DELETE CASCADE,
        key TEXT NOT NULL,
        document TEXT NOT NULL,
        changed_at BIGINT NOT NULL,
        archived_at BIGINT,
        PRIMARY KEY (coach_id, key)){clustered}""",
)


def up(_: SchemaMigrator, db: Database) -> None:
    on_sqlite = isinstance(db, SqliteDatabase)
    for statement in STATEMENTS:
        db.execute_sql(statement.replace("{clustered}", " WITHOUT ROWID" if on_sqlite else ""))
