"""What the coach recorded of screening, and what closed sessions amounted to beside their sets."""

from peewee import Database, SqliteDatabase
from playhouse.migrate import SchemaMigrator

STATEMENTS = (
    "ALTER TABLE athlete ADD COLUMN screening_asked_at BIGINT",
    """CREATE TABLE screening_record (
        athlete_id TEXT NOT NULL REFERENCES athlete(id) ON DELETE CASCADE,
        number INTEGER NOT NULL,
        kind TEXT NOT NULL,
        body TEXT NOT NULL,
        recorded_at BIGINT NOT NULL,
        recorded_by TEXT NOT NULL,
        withdrawn_at BIGINT,
        PRIMARY KEY (athlete_id, number)){clustered}""",
    """CREATE TABLE session_fact (
        athlete_id TEXT NOT NULL REFERENCES athlete(id) ON DELETE CASCADE,
        kind TEXT NOT NULL,
        session_order TEXT NOT NULL,
        body TEXT NOT NULL,
        PRIMARY KEY (athlete_id, kind, session_order)){clustered}""",
)


def up(_: SchemaMigrator, db: Database) -> None:
    on_sqlite = isinstance(db, SqliteDatabase)
    for statement in STATEMENTS:
        db.execute_sql(statement.replace("{clustered}", " WITHOUT ROWID" if on_sqlite else ""))
