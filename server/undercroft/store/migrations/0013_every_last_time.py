"""Every session keeps its load of an exercise, not only the last: when the last one is taken back,
the one before it counts again.
"""

from peewee import Database, SqliteDatabase
from playhouse.migrate import SchemaMigrator

KEY = "PRIMARY KEY (athlete_id, exercise, session_order)"

ON_SQLITE = (
    "ALTER TABLE last_done RENAME TO last_done_before",
    f"""CREATE TABLE last_done (
        athlete_id TEXT NOT NULL REFERENCES athlete(id) ON DELETE CASCADE,
        exercise TEXT NOT NULL,
        session_order TEXT NOT NULL,
        kg DOUBLE PRECISION NOT NULL,
        {KEY})""",
    "INSERT INTO last_done SELECT athlete_id, exercise, session_order, kg FROM last_done_before",
    "DROP TABLE last_done_before",
)

ON_POSTGRESQL = (f"ALTER TABLE last_done DROP CONSTRAINT last_done_pkey, ADD {KEY}",)


def up(_: SchemaMigrator, db: Database) -> None:
    for statement in ON_SQLITE if isinstance(db, SqliteDatabase) else ON_POSTGRESQL:
        db.execute_sql(statement)
