"""Bodies and answers of the calculators' endpoints."""

from marshmallow import Schema, fields

from undercroft.documents.inputs import KINDS


class InputPartAnswer(Schema):
    """One input; `least` itself is not allowed where `above` is true."""

    name = fields.String()
    kind = fields.String(metadata={"enum": [word for _, word in KINDS]})
    about = fields.String()
    unit = fields.String()
    least = fields.Float(allow_none=True)
    most = fields.Float(allow_none=True)
    above = fields.Boolean()
    needed = fields.Boolean()
    default = fields.Raw(allow_none=True, metadata={"type": ["number", "string"]})
    choices = fields.List(fields.String())


class InputAnswer(InputPartAnswer):
    """`of` lists the fields of each item where the input is a list."""

    of = fields.List(fields.Nested(InputPartAnswer))


class CalculatorAnswer(Schema):
    key = fields.String()
    name = fields.String()
    formula = fields.String()
    source = fields.String()
    range = fields.String(metadata={"description": "where it holds"})
    doubt = fields.String()
    inputs = fields.List(fields.Nested(InputAnswer))


class CalculatorsAnswer(Schema):
    calculators = fields.List(fields.Nested(CalculatorAnswer))


class CalculationAsked(Schema):
    """`inputs` are those that the calculator lists."""

    inputs = fields.Dict(keys=fields.String(), required=True)


class FigureAnswer(Schema):
    name = fields.String()
    value = fields.Float()
    unit = fields.String()


class CalculationAnswer(Schema):
    result = fields.List(fields.Nested(FigureAnswer))
    formula = fields.String()
    source = fields.String()
    range = fields.String()
    doubt = fields.String()
    notes = fields.List(fields.String())
