"""Bodies and answers of the endpoints, with explicit fields in and out."""

from typing import Any

from marshmallow import Schema, ValidationError, fields, validate, validates_schema

from undercroft.documents.entries import Code
from undercroft.documents.fields import Text, Whole
from undercroft.services.clock import iso
from undercroft.services.rights import Right


def _is_list(value: Any) -> None:
    if not isinstance(value, list):
        raise ValidationError("no list; write a list in brackets")


class Moment(fields.Field[int]):
    """A time: whole milliseconds inside, ISO 8601 in UTC outside."""

    def __init__(self, **kwargs: Any) -> None:
        super().__init__(metadata={"type": "string", "format": "date-time"}, **kwargs)

    def _serialize(self, value: Any, attr: Any, obj: Any, **kwargs: Any) -> str | None:
        return None if value is None else iso(value)


class ErasureAsked(Schema):
    """The athlete's name, typed: nobody erases by a slip."""

    name = Text(200, 1, required=True)


class NewAthlete(Schema):
    name = Text(80, 1, required=True)


class DeviceAnswer(Schema):
    id = fields.String()
    name = fields.String()
    created_at = Moment()
    last_used_at = Moment()
    revoked_at = Moment(allow_none=True)
    stored_through = fields.Integer()
    cursor = fields.Integer()


class DevicesAnswer(Schema):
    devices = fields.List(fields.Nested(DeviceAnswer))


class WithRight(Schema):
    """What the coach who asks may do with an athlete, and whose athlete it is."""

    right = fields.String(metadata={"enum": [right.value for right in Right]})
    owner = fields.String()


class AthleteAnswer(WithRight):
    id = fields.String()
    name = fields.String()
    created_at = Moment()
    devices = fields.List(fields.Nested(DeviceAnswer))


class AthletesAnswer(Schema):
    athletes = fields.List(fields.Nested(AthleteAnswer))


class InvitationMade(Schema):
    id = fields.String()
    url = fields.String(metadata={"description": "the link; its secret is shown this once"})
    qr = fields.String(metadata={"description": "the same as an SVG picture"})
    expires_at = Moment()


class InvitationAnswer(Schema):
    id = fields.String()
    created_at = Moment()
    expires_at = Moment()
    used_at = Moment(allow_none=True)
    revoked_at = Moment(allow_none=True)


class InvitationsAnswer(Schema):
    invitations = fields.List(fields.Nested(InvitationAnswer))


class CodeAnswer(Schema):
    code = fields.String()
    expires_at = Moment()


class Secret(Schema):
    secret = Text(100, 1, required=True)


class SecretOrCode(Schema):
    """Either the secret of a link or a code as typed."""

    secret = Text(100, 1)
    code = Text(40, 1)

    @validates_schema
    def _one_of_them(self, data: dict[str, Any], **_: Any) -> None:
        if ("secret" in data) == ("code" in data):
            raise ValidationError("holds not exactly one of both; give either secret or code")


class Acceptance(SecretOrCode):
    device_name = Text(80, 1, required=True)


class InvitedAnswer(Schema):
    coach = fields.String()
    athlete = fields.String()
    expires_at = Moment()


class Named(Schema):
    id = fields.String()
    name = fields.String()


class PairedAnswer(Schema):
    device = fields.String()
    athlete = fields.Nested(Named)
    coach = fields.String()
    epoch = fields.String()
    cursor = fields.Integer()


class DeviceRenewed(Schema):
    device = fields.String()
    epoch = fields.String()


class SyncAsked(Schema):
    device = Text(64, 1, required=True)
    epoch = Text(64, 1, required=True, allow_none=True)
    cursor = Whole(least=0, most=2**53 - 1, required=True)
    entries = fields.Raw(
        required=True,
        validate=_is_list,
        metadata={
            "type": "array",
            "items": {},
            "description": "at most 500, each as /api/v1/schemas/entry says",
        },
    )


class SnapshotAsked(Schema):
    after = fields.Integer(
        load_default=0,
        validate=validate.Range(0, 2**53 - 1, error="no position; give the cursor you were given"),
    )


class VerdictProblem(Schema):
    code = fields.String(metadata={"enum": [code.value for code in Code]})
    where = fields.String()
    what = fields.String()
    right = fields.String()


class VerdictAnswer(Schema):
    """An entry with a verdict is on the server's disk."""

    id = fields.String(allow_none=True, metadata={"description": "null where it had none"})
    status = fields.String(metadata={"enum": ["stored", "duplicate", "held"]})
    position = fields.Integer(metadata={"description": "its place in the athlete's feed"})
    problem = fields.Nested(VerdictProblem)


class FeedItem(Schema):
    """One line of the feed; a newer one of the same kind and key supersedes it."""

    position = fields.Integer()
    kind = fields.String()
    key = fields.String()
    body = fields.Raw(metadata={"type": "object"})


class FeedPage(Schema):
    epoch = fields.String(metadata={"description": "names the database's life"})
    stored_through = fields.Integer(
        metadata={"description": "the device's entries up to this n are all here"}
    )
    feed = fields.List(fields.Nested(FeedItem))
    cursor = fields.Integer(
        metadata={"description": "ask from here next; below what you sent: take a snapshot"}
    )
    more = fields.Boolean(metadata={"description": "ask again at once"})
    server_time = fields.String(metadata={"format": "date-time"})


class SyncAnswer(FeedPage):
    verdicts = fields.List(fields.Nested(VerdictAnswer))
    revoked = fields.Boolean(metadata={"description": "true: unpaired; all that came is held"})


class SnapshotAnswer(FeedPage):
    device = fields.String()
    athlete = fields.Nested(Named)
    coach = fields.String()


class HeldAnswer(Schema):
    position = fields.Integer()
    device = fields.String()
    received_at = Moment()
    problem = fields.Nested(VerdictProblem)
    sent = fields.Raw(metadata={"description": "the entry as it came"})


class HeldAnswers(Schema):
    held = fields.List(fields.Nested(HeldAnswer))


class AcceptedAnswer(Schema):
    id = fields.String(metadata={"description": "the id under which it counts now"})


class Health(Schema):
    status = fields.String()
    version = fields.String()


class ProblemError(Schema):
    where = fields.String(metadata={"description": "the place, for people"})
    path = fields.String(metadata={"description": "the place, for programs"})
    what = fields.String()
    right = fields.String()


class ProblemDocument(Schema):
    """RFC 9457."""

    type = fields.String(required=True)
    title = fields.String(required=True)
    status = fields.Integer(required=True)
    detail = fields.String(required=True)
    errors = fields.List(fields.Nested(ProblemError))
