"""Each revision says to which run of its block it belongs: a block may be done more than once.

A run has the number of its first revision. So far every block had one run.
"""

from peewee import Database
from playhouse.migrate import SchemaMigrator

STATEMENTS = (
    "ALTER TABLE revision ADD COLUMN run INTEGER NOT NULL DEFAULT 0",
    """UPDATE revision SET run = (
        SELECT MIN(earlier.number) FROM revision AS earlier
        WHERE earlier.athlete_id = revision.athlete_id AND earlier.block = revision.block)""",
)


def up(_: SchemaMigrator, db: Database) -> None:
    for statement in STATEMENTS:
        db.execute_sql(statement)
