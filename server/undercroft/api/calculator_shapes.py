"""Bodies and answers of the calculators' endpoints."""

from marshmallow import Schema, fields

from undercroft.documents.inputs import KINDS


class WhenAnswer(Schema):
    """The input is asked for, and needed, where the choice called `name` is one of these."""

    name = fields.String()
    one_of = fields.List(fields.String())


class InputPartAnswer(Schema):
    """One input; `least` itself is not allowed where `above` is true."""

    name = fields.String()
    kind = fields.String(metadata={"enum": [word for _, word in KINDS]})
    label = fields.String()
    about = fields.String(metadata={"description": "more than the label; may be empty"})
    unit = fields.String()
    least = fields.Float(allow_none=True)
    most = fields.Float(allow_none=True)
    above = fields.Boolean()
    needed = fields.Boolean()
    default = fields.Raw(allow_none=True, metadata={"type": ["number", "string"]})
    choices = fields.List(fields.String())
    choice_names = fields.List(fields.String(), metadata={"description": "for people, in order"})


class InputAnswer(InputPartAnswer):
    """`of` lists the fields of each item where the input is a list; `when` null: always asked."""

    when = fields.Nested(WhenAnswer, allow_none=True)
    of = fields.List(fields.Nested(InputPartAnswer))


class CalculatorAnswer(Schema):
    key = fields.String()
    name = fields.String()
    formula = fields.String()
    source = fields.String()
    range = fields.String(metadata={"description": "where it holds"})
    doubt = fields.String()
    caution = fields.String(metadata={"description": "to read before the number; may be empty"})
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
