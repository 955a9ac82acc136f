"""Bodies and answers of the endpoints, with explicit fields in and out."""

from typing import Any

from marshmallow import Schema, ValidationError, fields, validates_schema

from undercroft.documents.fields import Text
from undercroft.services.clock import iso


class Moment(fields.Field[int]):
    """A time: whole milliseconds inside, ISO 8601 in UTC outside."""

    def __init__(self, **kwargs: Any) -> None:
        super().__init__(metadata={"type": "string", "format": "date-time"}, **kwargs)

    def _serialize(self, value: Any, attr: Any, obj: Any, **kwargs: Any) -> str | None:
        return None if value is None else iso(value)


class LogIn(Schema):
    email = Text(254, 3, required=True)
    password = Text(200, 1, required=True)


class CoachAnswer(Schema):
    id = fields.String()
    name = fields.String()
    email = fields.String()


class LogInAnswer(Schema):
    id = fields.String()
    agent = fields.String(metadata={"description": "what the browser called itself"})
    created_at = Moment()
    last_used_at = Moment()
    expires_at = Moment()
    this_one = fields.Boolean(metadata={"description": "the log-in that asks"})


class LogInsAnswer(Schema):
    log_ins = fields.List(fields.Nested(LogInAnswer))


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


class AthleteAnswer(Schema):
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
