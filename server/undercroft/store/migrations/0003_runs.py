"""Each revision says to which run of its block it belongs: a block may be done more than once.

A run has the number of its first revision. So far every block had one run. The index tells runs
apart without reading past the documents.
"""

from peewee import Database
from playhouse.migrate import SchemaMigrator

STATEMENTS = (
    "ALTER TABLE revision ADD COLUMN run INTEGER NOT NULL DEFAULT 0",
    """UPDATE revision SET run = (
        SELECT MIN(earlier.number) FROM revision AS earlier
        WHERE earlier.athlete_id = revision.athlete_id AND earlier.block = revision.block)""",
    "CREATE INDEX revision_athlete_id_run_number ON revision (athlete_id, run, number)",
)


def up(_: SchemaMigrator, db: Database) -> None:
    for statement in STATEMENTS:
        db.execute_sql(statement)
