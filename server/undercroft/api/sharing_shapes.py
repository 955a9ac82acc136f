"""Bodies and answers of sharing athletes with other coaches."""

from marshmallow import Schema, fields, validate

from undercroft.api.shapes import Moment, Named, WithRight
from undercroft.documents.fields import Text
from undercroft.services.rights import READ, WRITE, Right

MOST_ATHLETES = 500


class RightField(fields.Enum):
    """One of these rights, by its word."""

    def __init__(self, *rights: Right, **kwargs: object) -> None:
        words = [right.value for right in rights]
        super().__init__(
            Right,
            by_value=True,
            validate=validate.OneOf(rights, error=f"one of {', '.join(words)} is needed here"),
            metadata={"enum": words},
            **kwargs,  # type: ignore[arg-type]
        )


class OfferAsked(Schema):
    """`gives` own: the athletes are handed over, and `keeps` says what is left to the giver."""

    athletes = fields.List(Text(64, 1), required=True, validate=validate.Length(1, MOST_ATHLETES))
    gives = RightField(*Right, required=True)
    keeps = RightField(READ, load_default=None, allow_none=True)


class RightAsked(Schema):
    right = RightField(READ, WRITE, required=True)


class OfferMadeAnswer(Schema):
    id = fields.String()
    url = fields.String(metadata={"description": "the link; its secret is shown this once"})
    expires_at = Moment()


class SharingOfferAnswer(Schema):
    id = fields.String()
    coach = fields.String(metadata={"description": "who offers"})
    gives = fields.String(metadata={"enum": [right.value for right in Right]})
    keeps = fields.String(allow_none=True)
    athletes = fields.List(fields.Nested(Named))
    created_at = Moment()
    expires_at = Moment()
    used_at = Moment(allow_none=True)
    taker = fields.String(allow_none=True)
    revoked_at = Moment(allow_none=True)


class SharingOfferOpenedAnswer(SharingOfferAnswer):
    differing = fields.List(
        fields.String(),
        metadata={"description": "exercises that both coaches have; the taker's own would count"},
    )
    phones = fields.Integer(
        metadata={"description": "paired until now, and paired still once the athletes are taken"}
    )


class SharingOffersAnswer(Schema):
    offers = fields.List(fields.Nested(SharingOfferAnswer))


class OfferTakenAnswer(Schema):
    gives = fields.String(metadata={"enum": [right.value for right in Right]})
    athletes = fields.List(fields.Nested(Named))
    differing = fields.List(
        fields.String(),
        metadata={"description": "exercises that both coaches have; the taker's own count now"},
    )


class SharerAnswer(Schema):
    id = fields.String()
    name = fields.String()
    right = fields.String(metadata={"enum": [READ.value, WRITE.value]})
    given_at = Moment()


class SharingAnswer(WithRight):
    coaches = fields.List(fields.Nested(SharerAnswer))
    offers = fields.List(fields.Nested(SharingOfferAnswer))
