"""The ways in which a use is refused. The API turns each into one kind of problem document."""

from undercroft.documents.faults import Fault


class Refusal(Exception):
    """Refused: what was wrong, and what would be right."""

    def __init__(self, what: str, right: str = "", faults: tuple[Fault, ...] = ()) -> None:
        super().__init__(what)
        self.what, self.right, self.faults = what, right, faults


class NotFound(Refusal):
    """There is no such thing, or it is somebody else's: the two are not told apart."""

    def __init__(self, what: str = "there is nothing here under that name") -> None:
        super().__init__(what, "check the address, or ask whoever gave it to you")


class LogInNeeded(Refusal):
    """Nobody known is asking, or the log-in has expired."""


class CodeNeeded(LogInNeeded):
    """The password is right, and a code is wanted as well."""


class Revoked(LogInNeeded):
    """The device was known once and is so no more."""


class Erased(LogInNeeded):
    """The device was that of an athlete who was erased."""


class NotAllowed(Refusal):
    """Known, but not for this."""


class Invalid(Refusal):
    """What was sent is understood but cannot be used."""


class Conflict(Refusal):
    """It was changed or used up by somebody else meanwhile."""


class TooLarge(Refusal):
    """More than is taken at once."""


class TooOften(Refusal):
    """Tried too often; after `retry_after_s` it will be looked at again."""

    def __init__(self, retry_after_s: int) -> None:
        super().__init__("this was tried too often", f"wait {retry_after_s} s and try again")
        self.retry_after_s = retry_after_s


class Unavailable(Refusal):
    """It cannot be done now, and it is not the asker's fault."""

    def __init__(self, what: str, retry_after_s: int = 30) -> None:
        super().__init__(what, f"try again in {retry_after_s} s")
        self.retry_after_s = retry_after_s
