"""Refusals of the domain: where something is wrong, what is wrong, what would be right."""

from math import isfinite


class DomainError(ValueError):
    """A value that the domain cannot work with.

    `where` names the place, `what` says what stands there, `right` says what would be right; the
    message is the three in one sentence, fit to be shown to a person.
    """

    def __init__(self, where: str, what: str, right: str) -> None:
        super().__init__(f"{where}: {what}; {right}")
        self.where = where
        self.what = what
        self.right = right


class LoadError(DomainError):
    """A load, or a thing to load, that cannot be: `field` said `said` and wants `wants`."""

    def __init__(self, field: str, said: object, wants: str) -> None:
        super().__init__(field, f"is {said}", f"should be {wants}")


def positive(field: str, value: float, wants: str = "a number above 0") -> float:
    """Give `value` back, or raise LoadError where it is not a finite number above 0."""
    if not isfinite(value) or value <= 0:
        raise LoadError(field, value, wants)
    return value


def not_negative(field: str, value: float, wants: str = "0 or a number above 0") -> float:
    """Give `value` back, or raise LoadError where it is not a finite number of at least 0."""
    if not isfinite(value) or value < 0:
        raise LoadError(field, value, wants)
    return value


def whole(field: str, value: int, least: int = 0) -> int:
    """Give `value` back, or raise LoadError where it is not a whole number of at least `least`."""
    if isinstance(value, bool) or not isinstance(value, int) or value < least:
        raise LoadError(field, value, f"a whole number from {least} up")
    return value
