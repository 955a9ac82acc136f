"""The first tables.

Plain SQL that both engines take, written once and never changed: what a table was at this point
of its history does not follow later models. `{clustered}`: SQLite keeps the rows of this table in
the order of its key, which saves an index and reads the feed in one go.
"""

from peewee import Database, SqliteDatabase
from playhouse.migrate import SchemaMigrator

STATEMENTS = (
    "CREATE TABLE meta (name TEXT NOT NULL PRIMARY KEY, value TEXT NOT NULL)",
    """CREATE TABLE coach (
        id TEXT NOT NULL PRIMARY KEY,
        email TEXT NOT NULL,
        name TEXT NOT NULL,
        password_hash TEXT NOT NULL,
        created_at BIGINT NOT NULL)""",
    "CREATE UNIQUE INDEX coach_email ON coach (email)",
    """CREATE TABLE coach_login (
        id TEXT NOT NULL PRIMARY KEY,
        coach_id TEXT NOT NULL REFERENCES coach(id) ON DELETE CASCADE,
        token_hash TEXT NOT NULL,
        created_at BIGINT NOT NULL,
        last_used_at BIGINT NOT NULL,
        expires_at BIGINT NOT NULL,
        agent TEXT NOT NULL)""",
    "CREATE UNIQUE INDEX coach_login_token_hash ON coach_login (token_hash)",
    "CREATE INDEX coach_login_coach_id ON coach_login (coach_id)",
    """CREATE TABLE athlete (
        id TEXT NOT NULL PRIMARY KEY,
        coach_id TEXT NOT NULL REFERENCES coach(id),
        name TEXT NOT NULL,
        document TEXT,
        kit TEXT,
        position BIGINT NOT NULL,
        created_at BIGINT NOT NULL)""",
    "CREATE INDEX athlete_coach_id ON athlete (coach_id)",
    """CREATE TABLE device (
        id TEXT NOT NULL PRIMARY KEY,
        athlete_id TEXT NOT NULL REFERENCES athlete(id) ON DELETE CASCADE,
        name TEXT NOT NULL,
        token_hash TEXT NOT NULL,
        created_at BIGINT NOT NULL,
        last_used_at BIGINT NOT NULL,
        revoked_at BIGINT,
        stored_through BIGINT NOT NULL,
        cursor BIGINT NOT NULL,
        sync_window BIGINT NOT NULL,
        sync_count INTEGER NOT NULL)""",
    "CREATE UNIQUE INDEX device_token_hash ON device (token_hash)",
    "CREATE INDEX device_athlete_id ON device (athlete_id)",
    """CREATE TABLE invitation (
        id TEXT NOT NULL PRIMARY KEY,
        athlete_id TEXT NOT NULL REFERENCES athlete(id) ON DELETE CASCADE,
        secret_hash TEXT NOT NULL,
        created_at BIGINT NOT NULL,
        expires_at BIGINT NOT NULL,
        used_at BIGINT,
        revoked_at BIGINT)""",
    "CREATE UNIQUE INDEX invitation_secret_hash ON invitation (secret_hash)",
    "CREATE INDEX invitation_athlete_id ON invitation (athlete_id)",
    """CREATE TABLE pairing_code (
        code_hash TEXT NOT NULL PRIMARY KEY,
        selector TEXT NOT NULL,
        athlete_id TEXT NOT NULL REFERENCES athlete(id) ON DELETE CASCADE,
        invitation_id TEXT REFERENCES invitation(id) ON DELETE CASCADE,
        expires_at BIGINT NOT NULL,
        tries_left INTEGER NOT NULL,
        used_at BIGINT)""",
    "CREATE INDEX pairing_code_selector ON pairing_code (selector)",
    "CREATE INDEX pairing_code_athlete_id ON pairing_code (athlete_id)",
    "CREATE INDEX pairing_code_invitation_id ON pairing_code (invitation_id)",
    """CREATE TABLE block (
        id TEXT NOT NULL PRIMARY KEY,
        coach_id TEXT NOT NULL REFERENCES coach(id),
        name TEXT NOT NULL,
        document TEXT NOT NULL,
        updated_at BIGINT NOT NULL)""",
    "CREATE INDEX block_coach_id ON block (coach_id)",
    """CREATE TABLE revision (
        athlete_id TEXT NOT NULL REFERENCES athlete(id) ON DELETE CASCADE,
        number INTEGER NOT NULL,
        block TEXT NOT NULL,
        document TEXT NOT NULL,
        starts_on TEXT NOT NULL,
        overrules TEXT NOT NULL,
        sent_at BIGINT NOT NULL,
        sent_by TEXT NOT NULL,
        PRIMARY KEY (athlete_id, number))""",
    """CREATE TABLE sheet (
        athlete_id TEXT NOT NULL REFERENCES athlete(id) ON DELETE CASCADE,
        revision INTEGER NOT NULL,
        session TEXT NOT NULL,
        position BIGINT,
        on_day TEXT NOT NULL,
        document TEXT NOT NULL,
        PRIMARY KEY (athlete_id, revision, session))""",
    """CREATE TABLE entry (
        athlete_id TEXT NOT NULL REFERENCES athlete(id) ON DELETE CASCADE,
        position BIGINT NOT NULL,
        id TEXT NOT NULL,
        twin INTEGER NOT NULL,
        device TEXT NOT NULL,
        n BIGINT,
        v INTEGER,
        kind TEXT NOT NULL,
        at TEXT,
        received_at BIGINT NOT NULL,
        revision INTEGER,
        session TEXT,
        "set" TEXT,
        replaces TEXT,
        body TEXT,
        digest TEXT NOT NULL,
        status TEXT NOT NULL CHECK (status IN ('stored', 'held')),
        problem TEXT,
        sent TEXT,
        accepted_at BIGINT,
        PRIMARY KEY (athlete_id, position)){clustered}""",
    "CREATE UNIQUE INDEX entry_athlete_id_id_twin ON entry (athlete_id, id, twin)",
    "CREATE INDEX entry_athlete_id_device_n ON entry (athlete_id, device, n)",
    "CREATE INDEX entry_athlete_id_session_kind ON entry (athlete_id, session, kind)",
    "CREATE INDEX entry_athlete_id_kind_position ON entry (athlete_id, kind, position)",
    """CREATE TABLE change (
        athlete_id TEXT NOT NULL REFERENCES athlete(id) ON DELETE CASCADE,
        position BIGINT NOT NULL,
        kind TEXT NOT NULL,
        key TEXT NOT NULL,
        body TEXT NOT NULL,
        superseded BOOLEAN NOT NULL,
        PRIMARY KEY (athlete_id, position))""",
    "CREATE INDEX change_athlete_id_kind_key ON change (athlete_id, kind, key)",
    """CREATE TABLE tracker_state (
        athlete_id TEXT NOT NULL REFERENCES athlete(id) ON DELETE CASCADE,
        lift TEXT NOT NULL,
        session_order TEXT NOT NULL,
        body TEXT NOT NULL,
        PRIMARY KEY (athlete_id, lift, session_order))""",
    """CREATE TABLE last_done (
        athlete_id TEXT NOT NULL REFERENCES athlete(id) ON DELETE CASCADE,
        exercise TEXT NOT NULL,
        session_order TEXT NOT NULL,
        kg DOUBLE PRECISION NOT NULL,
        PRIMARY KEY (athlete_id, exercise))""",
    """CREATE TABLE rate_limit (
        bucket TEXT NOT NULL,
        "window" BIGINT NOT NULL,
        count INTEGER NOT NULL,
        PRIMARY KEY (bucket, "window"))""",
)


STATISTICS = (
    ("entry", "entry", "1000000 20000 1"),
    ("entry", "entry_athlete_id_id_twin", "1000000 20000 1 1"),
    ("entry", "entry_athlete_id_device_n", "1000000 20000 5000 1"),
    ("entry", "entry_athlete_id_session_kind", "1000000 20000 40 8"),
    ("entry", "entry_athlete_id_kind_position", "1000000 20000 1200 1"),
    ("change", "sqlite_autoindex_change_1", "1000000 20000 1"),
    ("change", "change_athlete_id_kind_key", "1000000 20000 500 2"),
)
"""For SQLite's planner: rows in all, then rows for each longer part of the index.

Without them it takes one athlete for ten rows and reads a whole ledger to find one entry.
"""


def up(_: SchemaMigrator, db: Database) -> None:
    on_sqlite = isinstance(db, SqliteDatabase)
    for statement in STATEMENTS:
        db.execute_sql(statement.replace("{clustered}", " WITHOUT ROWID" if on_sqlite else ""))
    if on_sqlite:
        db.execute_sql("ANALYZE")
        for row in STATISTICS:
            db.execute_sql("INSERT INTO sqlite_stat1 VALUES (?, ?, ?)", row)
        db.execute_sql("ANALYZE sqlite_schema")
