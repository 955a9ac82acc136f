"""A sheet in short beside the whole, for what looks back over dozens; the days of all of them.

What was kept before has none and is read whole, which tells the same.
"""

from peewee import Database
from playhouse.migrate import SchemaMigrator


def up(_: SchemaMigrator, db: Database) -> None:
    db.execute_sql("ALTER TABLE sheet ADD COLUMN short TEXT")
    db.execute_sql("CREATE INDEX sheet_athlete_id_on_day ON sheet (athlete_id, on_day)")
