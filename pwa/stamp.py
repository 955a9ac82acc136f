"""Tells whether the built app still matches its sources: a hash of `pwa/`, kept beside the build.

Standard library only: the build hook, `npm run build` and the server at start all read it.
Run as a script it stamps the build that `vite build` has just written.
"""

import hashlib
import os
from pathlib import Path

PWA = Path(__file__).resolve().parent
WEB = PWA.parent / "server" / "undercroft" / "web"
STAMP = "stamp"
NOT_BUILT = frozenset({"node_modules", "tests", "__pycache__"})


def sources(pwa: Path = PWA) -> list[Path]:
    """Every file that can change what the build writes, in a fixed order."""
    found: list[Path] = []
    for folder, below, names in os.walk(pwa):
        below[:] = [name for name in below if name not in NOT_BUILT and not name.startswith(".")]
        found += [Path(folder, name) for name in names if goes_into_build(name)]
    return sorted(found, key=lambda path: path.relative_to(pwa).as_posix())


def goes_into_build(name: str) -> bool:
    return not (name.startswith(".") or ".test." in name or name.endswith(".py"))


def of_sources(pwa: Path = PWA) -> str:
    """SHA-256 over the names and contents of the sources, in hexadecimal."""
    whole = hashlib.sha256()
    for path in sources(pwa):
        name = path.relative_to(pwa).as_posix().encode()
        whole.update(name + b"\0" + hashlib.sha256(path.read_bytes()).digest())
    return whole.hexdigest()


def of_build(web: Path = WEB) -> str | None:
    """The stamp of the sources that `web` was built from; None where nothing whole was built."""
    path = web / STAMP
    return path.read_text().strip() if path.is_file() else None


def is_current(pwa: Path = PWA, web: Path = WEB) -> bool:
    return of_build(web) == of_sources(pwa)


def write(stamp: str, web: Path = WEB) -> None:
    (web / STAMP).write_text(stamp + "\n")


if __name__ == "__main__":
    write(of_sources())
