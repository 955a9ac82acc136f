"""What is known under the ids and numbers of one batch, kept up to date while it is judged."""

from collections.abc import Iterable

from undercroft.store.entries import Known


class Shelf:
    """By id, and by number of the device; an entry twice in a batch meets itself here.

    `newest` is the highest number of the device that was here before the batch.
    """

    def __init__(self, known: Iterable[Known]) -> None:
        self._by_id: dict[str, list[Known]] = {}
        self._by_n: dict[int, str] = {}
        self.newest = 0
        for one in known:
            self.put(one)

    def put(self, one: Known) -> Known:
        self._by_id.setdefault(one.id, []).append(one)
        return one

    def note_number(self, n: int, id_: str) -> None:
        """The device has given this number to this entry; the first one keeps it."""
        self._by_n.setdefault(n, id_)

    def same(self, id_: str, digest: str) -> Known | None:
        """The same entry with the same content."""
        for one in self._by_id.get(id_, ()):
            if one.digest == digest:
                return one
        return None

    def under(self, id_: str) -> list[Known]:
        """Entries of any content with this id."""
        return self._by_id.get(id_, [])

    def twins(self, id_: str) -> int:
        """How many entries of any content have this id."""
        return len(self._by_id.get(id_, ()))

    def number_taken(self, n: int | None, id_: str) -> bool:
        """Has this device given this number to an entry with another id?"""
        return n is not None and self._by_n.get(n, id_) != id_
