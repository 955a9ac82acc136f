"""What the desk has to know of occlusion work beforehand: patterns of sets, and the limits."""

from dataclasses import dataclass

from undercroft.domain.occlusion import NO_CLINICIAN, PATTERNS, ClinicianLimits, Pattern


@dataclass(frozen=True, slots=True)
class OcclusionGuide:
    """`limits` are the product's own: a clinician can only make them tighter."""

    patterns: tuple[Pattern, ...]
    limits: ClinicianLimits


def guide() -> OcclusionGuide:
    """The same for everybody."""
    return OcclusionGuide(PATTERNS, NO_CLINICIAN)
