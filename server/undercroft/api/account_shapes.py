"""Bodies and answers of a coach's own account."""

from marshmallow import Schema, fields

from undercroft.api.shapes import Moment
from undercroft.documents.fields import Text


class LogIn(Schema):
    email = Text(254, 3, required=True)
    password = Text(200, 1, required=True)
    code = Text(40, 1, {"description": "where the answer without it was code-needed"})


class PasswordAsked(Schema):
    """The present password, again."""

    password = Text(200, 1, required=True)


class FactorProof(PasswordAsked):
    """With a code of the app; a recovery code does where a second factor is on."""

    code = Text(40, 1, required=True)


class PasswordChange(Schema):
    old = Text(200, 1, required=True)
    new = Text(200, 1, required=True)
    code = Text(40, 1, {"description": "where a second factor is on"})


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


class FactorAnswer(Schema):
    """`on_since` is null where the password is enough."""

    on_since = Moment(allow_none=True)
    recovery_codes_left = fields.Integer()


class FactorBegun(Schema):
    secret = fields.String(metadata={"description": "in base32; shown this once"})
    qr = fields.String(metadata={"description": "for the app, as an SVG picture"})


class RecoveryCodes(Schema):
    codes = fields.List(
        fields.String(), metadata={"description": "each is good once; shown this once"}
    )
