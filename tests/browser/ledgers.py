"""What has arrived on the server."""

from collections import Counter

from tests.browser.conftest import Squad
from tests.server_process import ServerProcess

from undercroft.domain.ledger import Entry
from undercroft.services import ledger
from undercroft.store import database


def stored(server: ServerProcess, squad: Squad) -> list[Entry]:
    """What the server holds, read from its file."""
    database.open_database(server.database)
    database.connect()
    try:
        return ledger.entries_of(squad.athlete_id)
    finally:
        database.close_all()


def kinds(entries: list[Entry]) -> Counter[str]:
    return Counter(entry.kind for entry in entries)
