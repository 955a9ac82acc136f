"""Why a file cannot be shown."""


class Unusable(ValueError):
    """No photo or clip that is taken: what is wrong with it, and what would be right."""

    def __init__(self, what: str, right: str) -> None:
        super().__init__(what)
        self.what, self.right = what, right
