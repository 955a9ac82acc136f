"""Proposed changes of the kit: answers."""

from marshmallow import Schema, fields


class ProposalAnswer(Schema):
    id = fields.String(metadata={"description": "of the entry that proposes it"})
    at = fields.String(metadata={"format": "date-time", "description": "by the phone's clock"})
    item = fields.String()
    says = fields.String(metadata={"description": "empty: of a shape that is not known here"})
    change = fields.Raw(metadata={"type": "object", "description": "as the phone sent it"})
    trouble = fields.String(
        allow_none=True, metadata={"description": "why it cannot be applied as the kit stands"}
    )


class ProposalsAnswer(Schema):
    proposals = fields.List(fields.Nested(ProposalAnswer))
