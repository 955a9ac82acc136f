"""A photo or clip of an exercise, one for each that a coach chose to show.

`data` stands last, so that SQLite reads the facts of a picture without it.
"""

from peewee import Database, SqliteDatabase
from playhouse.migrate import SchemaMigrator

STATEMENTS = (
    """CREATE TABLE picture (
        coach_id TEXT NOT NULL REFERENCES coach(id) ON DELETE CASCADE,
        key TEXT NOT NULL,
        hash TEXT NOT NULL,
        media TEXT NOT NULL,
        bytes INTEGER NOT NULL,
        words TEXT NOT NULL,
        changed_at BIGINT NOT NULL,
        data {blob} NOT NULL,
        PRIMARY KEY (coach_id, key))""",
    "CREATE INDEX picture_hash ON picture (coach_id, hash)",
)


def up(_: SchemaMigrator, db: Database) -> None:
    blob = "BLOB" if isinstance(db, SqliteDatabase) else "BYTEA"
    for statement in STATEMENTS:
        db.execute_sql(statement.replace("{blob}", blob))
