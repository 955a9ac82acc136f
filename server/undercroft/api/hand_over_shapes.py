"""A phone's hand-over file at the desk: bodies and answers."""

from marshmallow import Schema, fields, validate

MOST_CHARACTERS = 6_000_000
"""Some 15,000 entries: years without a network."""


class HandOverAsked(Schema):
    text = fields.String(
        required=True,
        validate=validate.Length(1, MOST_CHARACTERS, error="empty or too long; give the file"),
        metadata={"description": "the file as it is; a damaged one may hold anything"},
    )


class HandOverSeenAnswer(Schema):
    athlete = fields.String(metadata={"description": "whose phone wrote it"})
    phone = fields.String(
        allow_none=True, metadata={"description": "null: never paired here, all will be held"}
    )
    revoked = fields.Boolean(metadata={"description": "true: all will be held"})
    made_at = fields.String(metadata={"description": "by the phone's clock"})
    count = fields.Integer(metadata={"description": "entries that can be read"})
    here = fields.Integer(metadata={"description": "entries of these that came before"})
    lost = fields.Integer(metadata={"description": "entries that the damaged file has no more"})
    sets = fields.Integer()
    first_at = fields.String(allow_none=True)
    last_at = fields.String(allow_none=True)


class HandOverTakenAnswer(Schema):
    stored = fields.Integer()
    duplicate = fields.Integer(metadata={"description": "were here before"})
    held = fields.Integer(metadata={"description": "wait for the coach among held entries"})
    lost = fields.Integer()
