"""A file as it came, made into one that is shown."""

from dataclasses import dataclass

from undercroft.pictures.clip import clip
from undercroft.pictures.photo import photo
from undercroft.pictures.sniff import Sort, sort_of
from undercroft.pictures.unusable import Unusable


@dataclass(frozen=True, slots=True)
class Clean:
    """`media` is what `data` is, by our own making."""

    media: str
    data: bytes


def cleaned(data: bytes) -> Clean:
    """A photo as WebP, a clip as MP4 without sound. Raises Unusable."""
    sort = sort_of(data)
    if sort is Sort.PHOTO:
        return Clean("image/webp", photo(data))
    if sort is Sort.CLIP:
        return Clean("video/mp4", clip(data))
    raise Unusable(
        "this is neither a photo nor a clip that is known here",
        "take a photo as JPEG, PNG or WebP, or a clip as MP4, MOV or WebM",
    )
