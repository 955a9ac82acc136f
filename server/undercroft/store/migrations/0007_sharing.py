"""Rights of other coaches to an athlete, and the offers by which they come about.

`in_squad` says in one place whose athletes a coach has to do with, and how far: every query that
asks for a coach's athletes reads it.
"""

from peewee import Database, SqliteDatabase
from playhouse.migrate import SchemaMigrator

STATEMENTS = (
    """CREATE TABLE coach_right (
        athlete_id TEXT NOT NULL REFERENCES athlete(id) ON DELETE CASCADE,
        coach_id TEXT NOT NULL REFERENCES coach(id) ON DELETE CASCADE,
        level TEXT NOT NULL CHECK (level IN ('read', 'write')),
        given_at BIGINT NOT NULL,
        PRIMARY KEY (athlete_id, coach_id)){clustered}""",
    "CREATE INDEX coach_right_coach_id ON coach_right (coach_id)",
    """CREATE VIEW in_squad AS
        SELECT coach_id, id AS athlete_id, 'own' AS level FROM athlete
        UNION ALL SELECT coach_id, athlete_id, level FROM coach_right""",
    """CREATE TABLE offer (
        id TEXT NOT NULL PRIMARY KEY,
        coach_id TEXT NOT NULL REFERENCES coach(id) ON DELETE CASCADE,
        gives TEXT NOT NULL CHECK (gives IN ('read', 'write', 'own')),
        keeps TEXT CHECK (keeps IN ('read')),
        secret_hash TEXT NOT NULL,
        created_at BIGINT NOT NULL,
        expires_at BIGINT NOT NULL,
        used_at BIGINT,
        used_by TEXT REFERENCES coach(id) ON DELETE SET NULL,
        revoked_at BIGINT)""",
    "CREATE UNIQUE INDEX offer_secret_hash ON offer (secret_hash)",
    "CREATE INDEX offer_coach_id ON offer (coach_id)",
    """CREATE TABLE offered_athlete (
        offer_id TEXT NOT NULL REFERENCES offer(id) ON DELETE CASCADE,
        athlete_id TEXT NOT NULL REFERENCES athlete(id) ON DELETE CASCADE,
        PRIMARY KEY (offer_id, athlete_id)){clustered}""",
    "CREATE INDEX offered_athlete_athlete_id ON offered_athlete (athlete_id)",
    """CREATE TABLE erased_device (
        token_hash TEXT NOT NULL PRIMARY KEY,
        erased_at BIGINT NOT NULL)""",
)


def up(_: SchemaMigrator, db: Database) -> None:
    on_sqlite = isinstance(db, SqliteDatabase)
    for statement in STATEMENTS:
        db.execute_sql(statement.replace("{clustered}", " WITHOUT ROWID" if on_sqlite else ""))
