"""The database as the API meets it: opened once, a connection for each request, and its faults.

All that the API needs of the store is named here; the rest is behind the other services.
"""

from undercroft.store.database import (
    DatabaseFault,
    connect,
    disconnect,
    is_full,
    open_database,
)
from undercroft.store.feed import UnknownAthlete

__all__ = [
    "DatabaseFault",
    "UnknownAthlete",
    "connect",
    "disconnect",
    "is_full",
    "open_database",
]
