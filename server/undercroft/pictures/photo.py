"""A photo drawn anew: of a phone's size, upright, and without a word on where it was taken."""

import warnings
from io import BytesIO

from PIL import Image, ImageOps

from undercroft.pictures.unusable import Unusable

FORMATS = ("JPEG", "PNG", "WEBP")
LONG_SIDE = 1280
"""Pixels: a phone 390 wide shows three to each (own choice)."""

QUALITY = 80
"""Of WebP; about 150 kB for a photo of a cellar (measured)."""

MOST_PIXELS = 64_000_000
"""More than phones take in 2026 unless asked to; as bare colours they are 200 MB (own choice)."""


def photo(data: bytes) -> bytes:
    """The photo as WebP, at most LONG_SIDE pixels a side. Raises Unusable."""
    try:
        with warnings.catch_warnings():
            # Pillow's own limit on pixels only warns; ours comes after it and refuses.
            warnings.simplefilter("ignore", Image.DecompressionBombWarning)
            return _drawn_anew(data)
    except Unusable:
        raise
    except Image.DecompressionBombError:
        raise _too_many("far too many") from None
    except (OSError, ValueError, SyntaxError, EOFError):
        raise Unusable("the photo is damaged", "send it again, or take another one") from None


def _drawn_anew(data: bytes) -> bytes:
    with Image.open(BytesIO(data), formats=FORMATS) as taken:
        if taken.width * taken.height > MOST_PIXELS:
            raise _too_many(f"{taken.width} × {taken.height}")
        taken.draft("RGB", (LONG_SIDE, LONG_SIDE))
        upright = ImageOps.exif_transpose(taken).convert("RGBA" if _see_through(taken) else "RGB")
    upright.thumbnail((LONG_SIDE, LONG_SIDE))
    bare = Image.new(upright.mode, upright.size)
    bare.paste(upright)
    out = BytesIO()
    bare.save(out, "WEBP", quality=QUALITY)
    return out.getvalue()


def _too_many(pixels: str) -> Unusable:
    most = f"at most {MOST_PIXELS // 10**6} million in all"
    return Unusable(f"the photo has {pixels} pixels", f"make it smaller: {most}")


def _see_through(taken: Image.Image) -> bool:
    return taken.mode in ("RGBA", "LA", "PA") or "transparency" in taken.info
