"""What the wear of a session, as it was recorded, leaves to be said."""

from collections.abc import Iterator, Sequence
from itertools import groupby, pairwise

from undercroft.domain.occlusion.dose import Wear
from undercroft.domain.occlusion.issue import Issue, warn
from undercroft.domain.occlusion.protocol import break_issues, wear_issues
from undercroft.domain.occlusion.site import Site


def worn_issues(
    wears: Sequence[Wear], most_minutes: float | None = None
) -> Iterator[tuple[Site, Issue]]:
    """Wraps worn too long, put on again too soon, or never told to be off, limb by limb."""
    ordered = sorted(wears, key=lambda wear: (wear.site, wear.on_at))
    for site, group in groupby(ordered, key=lambda wear: wear.site):
        for issue in _of_limb(list(group), most_minutes):
            yield site, issue


def _of_limb(wears: list[Wear], most_minutes: float | None) -> Iterator[Issue]:
    for wear in wears:
        if wear.closed:
            yield from wear_issues(wear.seconds, most_minutes)
        else:
            right = "ask when it came off; until then it counts as worn up to the limit"
            yield warn("wear-open", f"no end is recorded of the wrap of {wear.on_at:%H:%M}", right)
    for one, following in pairwise(wears):
        yield from break_issues(max(0.0, (following.on_at - one.off_at).total_seconds()))
