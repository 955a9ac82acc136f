"""How rubber pulls: nominal stress over stretch ratio, one shape for every band.

The Mooney-Rivlin form for incompressible rubber pulled one way, σ = 2 (λ - λ⁻²)(C₁ + C₂/λ), with
λ = length / rest length. C₁ and C₂ are our fit to Treloar's data of 1944 on vulcanised natural
rubber up to λ = 3.1 (stress error at most 3.8 % from λ = 1.39 up); the data were seen in example
files of an open finite-element library. With C₂ = 0 it is the neo-Hookean form of shear modulus
2 C₁. Real bands have this shape and another amplitude, so the amplitude is measured.
"""

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]

C1_MPA = 0.1200
C2_MPA = 0.0760


def stress_mpa(stretch: Floats, c1: float = C1_MPA, c2: float = C2_MPA) -> Floats:
    """Force in N over the unstretched section in mm²; zero at and below λ = 1."""
    ratio = np.maximum(stretch, 1.0)
    stress: Floats = 2.0 * (ratio - ratio**-2) * (c1 + c2 / ratio)
    return stress


def stress_slope_mpa(stretch: Floats, c1: float = C1_MPA, c2: float = C2_MPA) -> Floats:
    """d(stress)/d(stretch); zero below λ = 1."""
    ratio = np.maximum(stretch, 1.0)
    slope = 2.0 * (c1 * (1.0 + 2.0 * ratio**-3) + 3.0 * c2 * ratio**-4)
    return np.where(stretch < 1.0, 0.0, slope)


def section_mm2(width_mm: float, thickness_mm: float) -> float:
    """Unstretched section of a loop band: it pulls with two strands."""
    return 2.0 * width_mm * thickness_mm
