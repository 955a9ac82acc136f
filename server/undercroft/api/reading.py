"""Read a body under caps: JSON on the wire, after inflating and in depth; a file in its size."""

import json
import zlib
from collections.abc import Iterable
from typing import Any, NoReturn

from flask import Request

from undercroft.api.problems import BadBody, WrongMedia
from undercroft.services.refusals import TooLarge

DEEPEST = 40
FILE_MEDIA = "application/octet-stream"
"""As with JSON no form of a page can send it, and a script of another site would have to ask."""


def read_json(request: Request, most_bytes: int) -> Any:
    """The body as plain data. Raises WrongMedia, TooLarge, BadBody."""
    if request.mimetype != "application/json":
        raise _wrong_media(request, "application/json")
    raw = _inflated(request, _on_the_wire(request, most_bytes), most_bytes)
    try:
        data = json.loads(raw.decode("utf-8"), parse_constant=_no_constant, parse_float=_finite)
    except (ValueError, RecursionError) as fault:
        raise BadBody(f"the body is no JSON: {_short(fault)}", "send it again, whole") from None
    _check_depth(data)
    return data


def read_file(request: Request, most_bytes: int) -> bytes:
    """The body as bytes, whatever they are. Raises WrongMedia, TooLarge, BadBody."""
    if request.mimetype != FILE_MEDIA:
        raise _wrong_media(request, FILE_MEDIA)
    if "Content-Encoding" in request.headers:
        raise WrongMedia("the file is encoded", "send it plain")
    data = _on_the_wire(request, most_bytes)
    if not data:
        raise BadBody("the file is empty", "send it again, whole")
    return data


def _wrong_media(request: Request, right: str) -> WrongMedia:
    return WrongMedia(
        f"the body is {request.mimetype or 'of no type'}", f"send Content-Type {right}"
    )


def _on_the_wire(request: Request, most_bytes: int) -> bytes:
    announced = request.content_length or most_bytes
    if announced > most_bytes:
        raise _too_large(most_bytes)
    # One more than was announced, and no more: room is made for as much as is asked for.
    raw: bytes = request.stream.read(announced + 1)
    if len(raw) > most_bytes:
        raise _too_large(most_bytes)
    return raw


def _inflated(request: Request, raw: bytes, most_bytes: int) -> bytes:
    """Never inflates beyond the cap, whatever the body claims to be."""
    encoding = request.headers.get("Content-Encoding", "identity").lower()
    if encoding == "identity":
        return raw
    if encoding != "gzip":
        raise WrongMedia(f"the body is encoded as {encoding[:20]!r}", "send it plain or as gzip")
    inflater = zlib.decompressobj(wbits=31)
    try:
        data = inflater.decompress(raw, most_bytes + 1)
    except zlib.error:
        raise BadBody("the body is no gzip", "send it again, whole") from None
    if len(data) > most_bytes:
        raise _too_large(most_bytes)
    if not inflater.eof or inflater.unused_data:
        raise BadBody("the gzip body was cut short or has more behind it", "send it again, whole")
    return data


def _too_large(most_bytes: int) -> TooLarge:
    return TooLarge(f"the body is larger than {most_bytes} bytes", "send it in smaller parts")


def _finite(text: str) -> float | str:
    """1e999 would be infinite; as text it is refused, or held, for what it is."""
    number = float(text)
    return number if number - number == 0 else text


def _no_constant(name: str) -> NoReturn:
    raise ValueError(f"{name} is no number")


def _short(fault: BaseException) -> str:
    return "too deep" if isinstance(fault, RecursionError) else str(fault)[:120]


def _check_depth(data: Any) -> None:
    level = [data]
    for _ in range(DEEPEST):
        level = [inner for item in level for inner in _inside(item) if type(inner) in (dict, list)]
        if not level:
            return
    raise BadBody(f"the body is nested deeper than {DEEPEST} levels", "send a flatter document")


def _inside(item: Any) -> Iterable[Any]:
    if type(item) is dict:
        return item.values()
    return item if type(item) is list else ()
