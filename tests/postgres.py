"""A private PostgreSQL cluster for the tests: made in a temporary folder, gone afterwards."""

import os
import shutil
import subprocess
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

HOW_TO_GET_IT = (
    "PostgreSQL's initdb was not found. The tests run on both databases; "
    "install it (Debian: apt-get install postgresql) or put its bin folder on PATH."
)


def binaries() -> Path:
    """The folder that holds initdb and pg_ctl; the newest of several."""
    on_path = shutil.which("initdb")
    if on_path:
        return Path(on_path).resolve().parent
    found = sorted(Path("/usr/lib/postgresql").glob("*/bin/initdb"), key=_version)
    if not found:
        raise RuntimeError(HOW_TO_GET_IT)
    return found[-1].parent


def _version(initdb: Path) -> float:
    return float(initdb.parent.parent.name)


@contextmanager
def cluster(*, durable: bool = False) -> Iterator[str]:
    """A running cluster; yields an address without database name, to be completed.

    Unless it is to be durable it waits for no disk.
    The socket lies in a folder with a short name: a socket path may have 107 bytes at most.
    PostgreSQL refuses to run as root, so it runs as `postgres` there.
    """
    bin_folder = binaries()
    folder = Path(tempfile.mkdtemp(prefix="ucpg", dir="/tmp"))
    as_whom = ["runuser", "-u", "postgres", "--"] if os.geteuid() == 0 else []
    if as_whom:
        shutil.chown(folder, "postgres")
    data = folder / "data"

    def run(*command: str) -> None:
        done = subprocess.run([*as_whom, *command], capture_output=True, text=True, cwd="/tmp")
        if done.returncode:
            raise RuntimeError(f"{command[0]} failed:\n{done.stdout}\n{done.stderr}")

    try:
        run(
            f"{bin_folder}/initdb", "-D", str(data), "-U", "undercroft",
            "-A", "trust", "-E", "UTF8", "--locale=C.UTF-8", "--no-sync",
        )  # fmt: skip
        fsync = "on" if durable else "off"
        options = f"-c fsync={fsync} -c listen_addresses='' -k {folder} -c max_connections=100"
        run(
            f"{bin_folder}/pg_ctl", "-D", str(data), "-w", "-l", f"{folder}/log",
            "-o", options, "start",
        )  # fmt: skip
        try:
            yield f"postgresql://undercroft@/%s?host={folder}"
        finally:
            run(f"{bin_folder}/pg_ctl", "-D", str(data), "-m", "immediate", "stop")
    finally:
        shutil.rmtree(folder, ignore_errors=True)
