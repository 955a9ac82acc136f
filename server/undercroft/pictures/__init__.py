"""Photos and clips made safe to pass on: bytes of unknown origin in, bytes of our own making out.

Nothing of what came in is kept as it was. What is not part of the picture is gone with it: where
and when it was taken, what a second program would read in the same bytes, the sound.
"""

from undercroft.pictures.clean import Clean, cleaned
from undercroft.pictures.unusable import Unusable

__all__ = ["Clean", "Unusable", "cleaned"]
