"""What a file is, by its first bytes; what its sender calls it counts for nothing."""

from enum import StrEnum

FIRST_BYTES = 32


class Sort(StrEnum):
    PHOTO = "photo"
    CLIP = "clip"


MOVIE_BRANDS = {b"avc1", b"iso2", b"iso4", b"iso5", b"iso6", b"isom", b"mp41", b"mp42", b"qt  "}
"""Of ISO base media files those that hold a movie; pictures of that family have brands of their own
(ISO/IEC 14496-12; MP4 registration authority; from memory)."""


def sort_of(data: bytes) -> Sort | None:
    """Photo for JPEG, PNG and WebP, clip for MP4, QuickTime and WebM, None for anything else.

    The signatures are those of the formats' specifications (WHATWG MIME Sniffing; from memory).
    """
    head = data[:FIRST_BYTES]
    webp = head.startswith(b"RIFF") and head[8:12] == b"WEBP"
    if webp or head.startswith((b"\xff\xd8\xff", b"\x89PNG\r\n\x1a\n")):
        return Sort.PHOTO
    movie = head[4:8] == b"ftyp" and head[8:12] in MOVIE_BRANDS
    return Sort.CLIP if movie or head.startswith(b"\x1a\x45\xdf\xa3") else None
