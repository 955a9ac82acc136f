"""Photos and clips of exercises."""

from marshmallow import Schema, fields

from undercroft.documents.fields import Text


class InWords(Schema):
    """The picture for those who do not see it."""

    words = Text(200, 1, required=True)


class PictureMade(Schema):
    hash = fields.String(metadata={"description": "SHA-256 of what is kept; its address"})


class PictureAnswer(PictureMade):
    media = fields.String(metadata={"enum": ["image/webp", "video/mp4"]})
    bytes = fields.Integer()
    words = fields.String()
