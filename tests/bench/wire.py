"""One kept HTTP connection that costs next to nothing itself, so that the server is measured.

The standard library's client spends some 10 µs on each header of an answer, which would count for
whoever sends fewer of them.
"""

import re
import socket
import time
from collections.abc import Mapping

HERE = "127.0.0.1"
PATIENCE_S = 60
_LENGTH = re.compile(rb"\r\ncontent-length: *(\d+)", re.IGNORECASE)


class Wire:
    """HTTP/1.1 (RFC 9112) as far as servers here speak it: answers with a Content-Length."""

    def __init__(self, port: int, wait_s: float = 20) -> None:
        """Connect to a server that may still be starting; raises OSError after `wait_s`."""
        until = time.monotonic() + wait_s
        while True:
            try:
                self._socket = socket.create_connection((HERE, port), PATIENCE_S)
                break
            except OSError:
                if time.monotonic() > until:
                    raise
                time.sleep(0.05)
        self._socket.setsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY, 1)

    def posts(self, path: str, body: bytes, headers: Mapping[str, str]) -> bytes:
        """The body of the answer, which must be a 200."""
        lines = [f"POST {path} HTTP/1.1", f"Host: {HERE}", f"Content-Length: {len(body)}"]
        lines += [f"{name}: {value}" for name, value in headers.items()]
        self._socket.sendall("\r\n".join([*lines, "", ""]).encode("ascii") + body)
        head, answer = self._head()
        length = _LENGTH.search(head)
        assert head.startswith(b"HTTP/1.1 200 "), head + answer
        assert length, head
        while len(answer) < int(length[1]):
            answer += self._more()
        return answer

    def _head(self) -> tuple[bytes, bytes]:
        got = self._more()
        while b"\r\n\r\n" not in got:
            got += self._more()
        head, _, rest = got.partition(b"\r\n\r\n")
        return head, rest

    def _more(self) -> bytes:
        part = self._socket.recv(1 << 16)
        assert part, "the server hung up"
        return part
