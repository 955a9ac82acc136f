"""Own exercises that another coach lent: by whom, and the digest of what was lent.

A copy that still has this digest was never changed by its new owner. Copies from before say
nothing of it, and are their owner's.
"""

from peewee import Database
from playhouse.migrate import SchemaMigrator


def up(_: SchemaMigrator, db: Database) -> None:
    db.execute_sql("ALTER TABLE own_exercise ADD COLUMN lent_by TEXT")
    db.execute_sql("ALTER TABLE own_exercise ADD COLUMN lent_digest TEXT")
