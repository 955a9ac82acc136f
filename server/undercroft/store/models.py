"""Every table. Times are whole milliseconds since 1970 in UTC; ids are UUID text.

Every table that grows with use has the athlete first in its key, so that PostgreSQL can
partition by it.
"""

from peewee import (
    BigIntegerField,
    BlobField,
    BooleanField,
    CompositeKey,
    FloatField,
    ForeignKeyField,
    IntegerField,
    Model,
    TextField,
)

from undercroft.store.database import JsonText, database


class Table(Model):
    class Meta:
        database = database
        legacy_table_names = False


class Meta(Table):
    """Facts about the database itself: `epoch` names its life."""

    name = TextField(primary_key=True)
    value = TextField()


class Coach(Table):
    id = TextField(primary_key=True)
    email = TextField(unique=True)
    name = TextField()
    password_hash = TextField()
    created_at = BigIntegerField()


class CoachLogin(Table):
    """One browser in which a coach is logged in; the token itself is not kept."""

    id = TextField(primary_key=True)
    coach_id: str
    coach = ForeignKeyField(Coach, on_delete="CASCADE")
    token_hash = TextField(unique=True)
    created_at = BigIntegerField()
    last_used_at = BigIntegerField()
    expires_at = BigIntegerField()
    agent = TextField()


class SecondFactor(Table):
    """The secret that a coach's app makes codes from; asked for at log-in once it is on."""

    coach_id: str
    coach = ForeignKeyField(Coach, primary_key=True, on_delete="CASCADE")
    secret = TextField()
    on_since = BigIntegerField(null=True)
    last_step = BigIntegerField()


class RecoveryCode(Table):
    """Opens the desk once in place of a code; the code itself is not kept."""

    coach_id: str
    coach = ForeignKeyField(Coach, on_delete="CASCADE", index=False)
    code_hash = TextField()

    class Meta:
        primary_key = CompositeKey("coach", "code_hash")


class Athlete(Table):
    """`position` is the last feed position given; raised only under the athlete's lock."""

    id = TextField(primary_key=True)
    coach_id: str
    coach = ForeignKeyField(Coach)
    name = TextField()
    document = JsonText(null=True)
    kit = JsonText(null=True)
    position = BigIntegerField(default=0)
    created_at = BigIntegerField()
    screening_asked_at = BigIntegerField(null=True)


class Device(Table):
    """A paired phone. `cursor` is the last feed position that it said it has.

    `sync_count` requests with entries came in the minute that began at `sync_window`: counted here
    because this row is written with each of them anyway.
    """

    id = TextField(primary_key=True)
    athlete_id: str
    athlete = ForeignKeyField(Athlete, on_delete="CASCADE")
    name = TextField()
    token_hash = TextField(unique=True)
    created_at = BigIntegerField()
    last_used_at = BigIntegerField()
    revoked_at = BigIntegerField(null=True)
    stored_through = BigIntegerField(default=0)
    cursor = BigIntegerField(default=0)
    sync_window = BigIntegerField(default=0)
    sync_count = IntegerField(default=0)


class Invitation(Table):
    id = TextField(primary_key=True)
    athlete_id: str
    athlete = ForeignKeyField(Athlete, on_delete="CASCADE")
    secret_hash = TextField(unique=True)
    created_at = BigIntegerField()
    expires_at = BigIntegerField()
    used_at = BigIntegerField(null=True)
    revoked_at = BigIntegerField(null=True)


class PairingCode(Table):
    """`selector` is the code's first half: it says which code a wrong guess costs a try."""

    code_hash = TextField(primary_key=True)
    selector = TextField(index=True)
    athlete_id: str
    athlete = ForeignKeyField(Athlete, on_delete="CASCADE")
    invitation_id: str | None
    invitation = ForeignKeyField(Invitation, null=True, on_delete="CASCADE")
    expires_at = BigIntegerField()
    tries_left = IntegerField()
    used_at = BigIntegerField(null=True)


class Block(Table):
    """What the coach is writing; what was sent is a revision."""

    id = TextField(primary_key=True)
    coach_id: str
    coach = ForeignKeyField(Coach)
    name = TextField()
    document = JsonText()
    updated_at = BigIntegerField()


class OwnExercise(Table):
    """An exercise that a coach added; an archived one stays for what was sent with it.

    Under a key of the catalogue it holds the coach's own cues alone. `lent_by` is the coach whose
    exercise it is a copy of, `lent_digest` that of the document as it was lent.
    """

    coach_id: str
    coach = ForeignKeyField(Coach, on_delete="CASCADE", index=False)
    key = TextField()
    document = JsonText()
    changed_at = BigIntegerField()
    archived_at = BigIntegerField(null=True)
    lent_by = TextField(null=True)
    lent_digest = TextField(null=True)

    class Meta:
        primary_key = CompositeKey("coach", "key")


class Picture(Table):
    """A photo or clip of an exercise, of our own making; `hash` is the SHA-256 of `data`.

    `words` tell it to those who do not see it. An address by hash never changes its content.
    """

    coach_id: str
    coach = ForeignKeyField(Coach, on_delete="CASCADE", index=False)
    key = TextField()
    hash = TextField()
    media = TextField()
    bytes = IntegerField()
    words = TextField()
    changed_at = BigIntegerField()
    data = BlobField()

    class Meta:
        primary_key = CompositeKey("coach", "key")
        indexes = ((("coach", "hash"), False),)


class Revision(Table):
    """One immutable state of a block, as sent to one athlete. `starts_on` is a Monday.

    `run` is the number of the first revision with which the block was begun this time.
    `overrules` are the stops that the coach set aside in writing. `known`: maxima and last loads as
    they were then; None where nobody kept them.
    """

    athlete_id: str
    athlete = ForeignKeyField(Athlete, on_delete="CASCADE", index=False)
    number = IntegerField()
    block = TextField(column_name="block")
    document = JsonText()
    starts_on = TextField()
    overrules = JsonText()
    sent_at = BigIntegerField()
    sent_by = TextField()
    run = IntegerField(default=0)
    known = JsonText(null=True)

    class Meta:
        primary_key = CompositeKey("athlete", "number")
        indexes = ((("athlete", "run", "number"), False),)


class OwnLayer(Table):
    """One athlete's own changes to a block; `number` counts how often they were written."""

    athlete_id: str
    athlete = ForeignKeyField(Athlete, on_delete="CASCADE", index=False)
    block = TextField(column_name="block")
    number = IntegerField()
    document = JsonText()
    changed_at = BigIntegerField()
    changed_by = TextField()

    class Meta:
        primary_key = CompositeKey("athlete", "block")


class Sheet(Table):
    """The newest load sheet of a session; `position` is how much of the ledger is in it.

    `on_day` is the day it is planned for, out of the document, so that days are found unread;
    `short` is what looking back asks of it.
    """

    athlete_id: str
    athlete = ForeignKeyField(Athlete, on_delete="CASCADE", index=False)
    revision = IntegerField()
    session = TextField()
    position = BigIntegerField(null=True)
    on_day = TextField()
    document = JsonText()
    short = JsonText(null=True)

    class Meta:
        primary_key = CompositeKey("athlete", "revision", "session")
        indexes = ((("athlete", "on_day"), False),)


class Entry(Table):
    """One line of the ledger. Never changed, save that a held one can be accepted.

    `status` is "stored" or "held"; only stored ones count. `twin` is 0 for the first entry that
    came under an id; others under the same id are held with 1, 2, … `sent` is the entry as it
    came, kept only where it was held. `accepted_at` is set on a held entry that was let in.
    """

    athlete_id: str
    athlete = ForeignKeyField(Athlete, on_delete="CASCADE", index=False)
    position = BigIntegerField()
    id = TextField()
    twin = IntegerField()
    device = TextField()
    n = BigIntegerField(null=True)
    v = IntegerField(null=True)
    kind = TextField()
    at = TextField(null=True)
    received_at = BigIntegerField()
    revision = IntegerField(null=True)
    session = TextField(null=True)
    set = TextField(null=True)
    replaces = TextField(null=True)
    body = JsonText(null=True)
    digest = TextField()
    status = TextField()
    problem = JsonText(null=True)
    sent = JsonText(null=True)
    accepted_at = BigIntegerField(null=True)

    class Meta:
        primary_key = CompositeKey("athlete", "position")
        indexes = (
            (("athlete", "id", "twin"), True),
            (("athlete", "device", "n"), False),
            (("athlete", "session", "kind", "revision", "status"), False),
            (("athlete", "kind", "position"), False),
        )


class Change(Table):
    """One line of the feed. A newer one of the same kind and key supersedes it."""

    athlete_id: str
    athlete = ForeignKeyField(Athlete, on_delete="CASCADE", index=False)
    position = BigIntegerField()
    kind = TextField()
    key = TextField()
    body = JsonText()
    superseded = BooleanField(default=False)

    class Meta:
        primary_key = CompositeKey("athlete", "position")
        indexes = ((("athlete", "kind", "key"), False),)


class TrackerState(Table):
    athlete_id: str
    athlete = ForeignKeyField(Athlete, on_delete="CASCADE", index=False)
    lift = TextField()
    session_order = TextField()
    body = JsonText()

    class Meta:
        primary_key = CompositeKey("athlete", "lift", "session_order")


class LastDone(Table):
    """The load of an exercise's first set in each session; `session_order` says when."""

    athlete = ForeignKeyField(Athlete, on_delete="CASCADE", index=False)
    exercise = TextField()
    session_order = TextField()
    kg = FloatField()

    class Meta:
        primary_key = CompositeKey("athlete", "exercise", "session_order")


class ScreeningRecord(Table):
    """What the coach recorded of screening; `kind` is signature, clearance or pressure.

    Nothing is changed or removed; what was withdrawn counts no more.
    """

    athlete_id: str
    athlete = ForeignKeyField(Athlete, on_delete="CASCADE", index=False)
    number = IntegerField()
    kind = TextField()
    body = JsonText()
    recorded_at = BigIntegerField()
    recorded_by = TextField()
    withdrawn_at = BigIntegerField(null=True)

    class Meta:
        primary_key = CompositeKey("athlete", "number")


class SessionFact(Table):
    """What a closed session amounted to beside its sets; `session_order` as in `TrackerState`.

    `kind` is occlusion (what each limb had) or velocity (loads with their velocities, by lift);
    for overdue, which speaks of no session, see `overdue.py`.
    """

    athlete_id: str
    athlete = ForeignKeyField(Athlete, on_delete="CASCADE", index=False)
    kind = TextField()
    session_order = TextField()
    body = JsonText()

    class Meta:
        primary_key = CompositeKey("athlete", "kind", "session_order")


class CoachRight(Table):
    """What a coach may do with another coach's athlete; `level` is "read" or "write".

    Queries read the view `in_squad` instead, which has the athletes' own coaches in it too.
    """

    athlete_id: str
    athlete = ForeignKeyField(Athlete, on_delete="CASCADE", index=False)
    coach_id: str
    coach = ForeignKeyField(Coach, on_delete="CASCADE")
    level = TextField()
    given_at = BigIntegerField()

    class Meta:
        primary_key = CompositeKey("athlete", "coach")


class Offer(Table):
    """A link by which another coach gets rights, or the athletes themselves (`gives` is "own").

    `keeps`: what whoever hands athletes over keeps, "read" or None for nothing.
    """

    id = TextField(primary_key=True)
    coach_id: str
    coach = ForeignKeyField(Coach, on_delete="CASCADE")
    gives = TextField()
    keeps = TextField(null=True)
    secret_hash = TextField(unique=True)
    created_at = BigIntegerField()
    expires_at = BigIntegerField()
    used_at = BigIntegerField(null=True)
    used_by_id: str | None
    used_by = ForeignKeyField(
        Coach, null=True, on_delete="SET NULL", column_name="used_by", index=False
    )
    revoked_at = BigIntegerField(null=True)


class OfferedAthlete(Table):
    offer_id: str
    offer = ForeignKeyField(Offer, on_delete="CASCADE", index=False)
    athlete_id: str
    athlete = ForeignKeyField(Athlete, on_delete="CASCADE")

    class Meta:
        primary_key = CompositeKey("offer", "athlete")


class ErasedDevice(Table):
    """The phone of an athlete who was erased, known by nothing but its token's fingerprint."""

    token_hash = TextField(primary_key=True)
    erased_at = BigIntegerField()


class RateLimit(Table):
    """How often something was tried in one window of time."""

    bucket = TextField()
    window = BigIntegerField()
    count = IntegerField()

    class Meta:
        primary_key = CompositeKey("bucket", "window")


ALL = (
    Meta,
    Coach,
    CoachLogin,
    SecondFactor,
    RecoveryCode,
    Athlete,
    Device,
    Invitation,
    PairingCode,
    Block,
    OwnExercise,
    Picture,
    Revision,
    OwnLayer,
    Sheet,
    Entry,
    Change,
    TrackerState,
    LastDone,
    ScreeningRecord,
    SessionFact,
    CoachRight,
    Offer,
    OfferedAthlete,
    ErasedDevice,
    RateLimit,
)
