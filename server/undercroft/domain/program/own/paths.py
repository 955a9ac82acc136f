"""Places of an athlete's own block found again in the block as it is written."""

from undercroft.domain.program.block import Block

LEVELS = ("weeks", "sessions", "exercises", "sets")


def path_beneath(path: str, own: Block, block: Block) -> str:
    """Where the same stands in the block; cut short at what only the athlete has.

    A path counts places, as in findings; an athlete who leaves one out counts otherwise.
    """
    steps = path.split(".")
    kept: list[str] = []
    here, there = own, block
    while len(steps) > 1 and steps[0] in LEVELS:
        level, place, *steps = steps
        here = getattr(here, level)[int(place)]
        keys = [one.key for one in getattr(there, level)]
        if here.key not in keys:
            return ".".join(kept)
        found = keys.index(here.key)
        there = getattr(there, level)[found]
        kept += [level, str(found)]
    return ".".join([*kept, *steps])
