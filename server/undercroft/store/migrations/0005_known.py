"""Each revision keeps what was known when it was sent: maxima, and what was done last.

A load in kilograms is a share of a maximum that moves on; what share it was when it was sent is
asked for when the next loads are proposed. Revisions from before have nothing to say.
"""

from peewee import Database
from playhouse.migrate import SchemaMigrator


def up(_: SchemaMigrator, db: Database) -> None:
    db.execute_sql("ALTER TABLE revision ADD COLUMN known TEXT")
