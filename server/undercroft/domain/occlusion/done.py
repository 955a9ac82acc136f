"""Questions that the repetitions of a set list ask; none of them is a fault of the athlete."""

from collections.abc import Iterator, Sequence

from undercroft.domain.occlusion.issue import Issue, note, warn
from undercroft.domain.occlusion.settings import LIMITS


def reps_issues(reps: Sequence[int]) -> Iterator[Issue]:
    """What repetitions that were done with the wrap on leave to be asked.

    Missing 15 in the third and fourth set is normal: the means are 11.5 and 10.4 (Rolnick et al.
    2025, seen). Single athletes scatter far more than studies' means, so nothing is refused.
    """
    if not reps:
        return
    least, most = LIMITS.first_set_least, LIMITS.first_set_most
    if not least <= reps[0] <= most:
        right = f"{least}-{most} are usual: was it the right load, and the wrap on?"
        yield note("first-set", f"{reps[0]} repetitions in the first set", right)
    if len(reps) > 2 and min(reps) >= 30 and min(reps) >= reps[0]:
        sets = "-".join(str(one) for one in reps)
        right = "the later sets fall off: is the load too light, the wrap too loose, the log right?"
        yield warn("no-drop", f"{sets} with a wrap on", right)
