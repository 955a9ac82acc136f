"""What is known under the ids and numbers of one batch, kept up to date while it is judged."""

from collections import defaultdict
from collections.abc import Iterable

from undercroft.store.entries import Known


class Shelf:
    """By id and by number of one device; an entry twice in a batch meets itself here."""

    def __init__(self, device_id: str, known: Iterable[Known]) -> None:
        self._device_id = device_id
        self._by_id: dict[str, list[Known]] = defaultdict(list)
        self._by_n: dict[int, str] = {}
        for one in known:
            self.put(one)

    def put(self, one: Known) -> Known:
        self._by_id[one.id].append(one)
        self.note_number(one)
        return one

    def note_number(self, one: Known) -> None:
        if one.n is not None and one.device == self._device_id:
            self._by_n.setdefault(one.n, one.id)

    def same(self, id_: str, digest: str) -> Known | None:
        """The same entry with the same content."""
        return next((one for one in self._by_id.get(id_, ()) if one.digest == digest), None)

    def twins(self, id_: str) -> int:
        """How many entries of any content have this id."""
        return len(self._by_id.get(id_, ()))

    def number_taken(self, n: int | None, id_: str) -> bool:
        """Has this device given this number to an entry with another id?"""
        return n is not None and self._by_n.get(n, id_) != id_
