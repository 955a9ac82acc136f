"""Where a server process dies: lines of Python put before its start, which end it by SIGKILL."""

from random import Random

KILL = """
import os, signal, threading, time
import peewee
from undercroft.services import feed, replanning
from undercroft.store import entries

def dies():
    os.kill(os.getpid(), signal.SIGKILL)

def on_call(original, number, *, first=False, then=dies):
    calls = 0
    def wrapper(*args, **kwargs):
        nonlocal calls
        calls += 1
        if calls != number:
            return original(*args, **kwargs)
        if first:
            answer = original(*args, **kwargs)
            then()
            return answer
        then()
        return original(*args, **kwargs)
    return wrapper
"""

SOON = """
def soon():
    threading.Thread(target=lambda: (time.sleep({seconds}), dies()), daemon=True).start()
"""

ANY_MOMENT = "at any moment"
"""The signal comes from outside, whatever the process is at."""

DEATHS = {
    "before the rows of a batch": "entries.add_rows = on_call(entries.add_rows, {call})",
    "between its rows and its commit": (
        "entries.add_rows = on_call(entries.add_rows, {call}, first=True)"
    ),
    "while loads are worked out again": (
        "replanning.replan.replan = on_call(replanning.replan.replan, {call}, first=True)"
    ),
    "while it commits": (
        "armed = []\n"
        "entries.add_rows = on_call(entries.add_rows, {call}, then=lambda: armed.append(1))\n"
        "commit = peewee.Database.commit\n"
        "def committing(self):\n"
        "    if armed: soon()\n"
        "    return commit(self)\n"
        "peewee.Database.commit = committing"
    ),
    "after the commit, before the answer": "feed.page = on_call(feed.page, {call})",
    ANY_MOMENT: "",
}


def death(where: str, chance: Random) -> str:
    """The lines for one process, which will die at one of its first calls there."""
    soon = SOON.format(seconds=chance.uniform(0, 0.004))
    lines = DEATHS[where].format(call=chance.randint(1, 6))
    return f"{KILL}{soon}{lines}\n"
