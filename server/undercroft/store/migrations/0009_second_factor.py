"""A second factor for coaches who want one, and what opens the desk when it is lost.

`last_step` is the time step of the last code that was accepted: no code before it counts again.
"""

from peewee import Database, SqliteDatabase
from playhouse.migrate import SchemaMigrator

STATEMENTS = (
    """CREATE TABLE second_factor (
        coach_id TEXT NOT NULL PRIMARY KEY REFERENCES coach(id) ON DELETE CASCADE,
        secret TEXT NOT NULL,
        on_since BIGINT,
        last_step BIGINT NOT NULL)""",
    """CREATE TABLE recovery_code (
        coach_id TEXT NOT NULL REFERENCES coach(id) ON DELETE CASCADE,
        code_hash TEXT NOT NULL,
        PRIMARY KEY (coach_id, code_hash)){clustered}""",
)


def up(_: SchemaMigrator, db: Database) -> None:
    on_sqlite = isinstance(db, SqliteDatabase)
    for statement in STATEMENTS:
        db.execute_sql(statement.replace("{clustered}", " WITHOUT ROWID" if on_sqlite else ""))
