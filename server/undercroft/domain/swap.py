"""What a swap is to: another exercise, or the same one rigged otherwise."""

OTHER_BANDS, UNRIGGED = "other-bands", "unrigged"
"""What follows the exercise's key after a dot, which no key of an exercise holds."""


def swapped_exercise(to: str) -> str:
    """The exercise that a swap was to."""
    return to.partition(".")[0]


def swapped_rig(to: str) -> str:
    """How it was rigged otherwise; empty where it is another exercise."""
    return to.partition(".")[2]
