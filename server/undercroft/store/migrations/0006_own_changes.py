"""What one athlete does otherwise than a block says, kept apart from the block."""

from peewee import Database
from playhouse.migrate import SchemaMigrator


def up(_: SchemaMigrator, db: Database) -> None:
    db.execute_sql(
        """CREATE TABLE own_layer (
            athlete_id TEXT NOT NULL REFERENCES athlete(id) ON DELETE CASCADE,
            block TEXT NOT NULL,
            number INTEGER NOT NULL,
            document TEXT NOT NULL,
            changed_at BIGINT NOT NULL,
            changed_by TEXT NOT NULL,
            PRIMARY KEY (athlete_id, block))"""
    )
