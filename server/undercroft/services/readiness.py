"""Can this process serve?"""

from undercroft.services.refusals import Unavailable
from undercroft.store.migrate import pending


def require_ready() -> None:
    """Raises Unavailable unless the database answers and is up to date."""
    waiting = pending()
    if waiting:
        raise Unavailable(f"the database lacks {', '.join(waiting)}")
