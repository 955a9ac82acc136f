"""Entries as phones send them: read strictly, and never dropped.

What cannot be read is held with its trouble, so that one bad entry blocks none behind it.
"""

import hashlib
import json
import re
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum
from operator import itemgetter
from typing import Any, NamedTuple

from undercroft.documents.fields import say
from undercroft.documents.kinds import KEY, KINDS, Belongs, Kind
from undercroft.documents.rules import Rule, matching, nullable, one_of, whole
from undercroft.domain.ledger import Entry

VERSION = 1
"""The newest version of entries that this program understands."""

_HEX = "[0-9a-f]"
ID = matching(
    f"{_HEX}{{8}}-{_HEX}{{4}}-7{_HEX}{{3}}-[89ab]{_HEX}{{3}}-{_HEX}{{12}}",
    "a UUID of version 7 in small letters",
)
_AT = re.compile(r"\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d{1,6})?(Z|[+-]\d\d:\d\d)")


class Code(StrEnum):
    """Why an entry is held, for programs."""

    BAD_SHAPE = "bad-shape"
    UNKNOWN_KIND = "unknown-kind"
    NEWER_VERSION = "newer-version"
    ID_TAKEN = "id-taken"
    N_TAKEN = "n-taken"
    REVOKED = "revoked-device"
    UNKNOWN_DEVICE = "unknown-device"


@dataclass(frozen=True, slots=True)
class Trouble:
    """Why an entry is held: where in it, what is wrong, what would be right."""

    code: Code
    where: str
    what: str
    right: str

    def plain(self) -> dict[str, str]:
        return {"code": self.code, "where": self.where, "what": self.what, "right": self.right}


def _is_time(value: Any) -> bool:
    if type(value) is not str or not _AT.fullmatch(value):
        return False
    try:
        return datetime.fromisoformat(value).tzinfo is not None
    except ValueError:
        return False


ENVELOPE: Mapping[str, Rule] = {
    "id": ID,
    "v": one_of(*range(1, VERSION + 1)),
    "n": whole(1, 2**53 - 1),
    "kind": one_of(*KINDS),
    "replaces": nullable(ID),
    "at": Rule(
        _is_time,
        "a time with its offset, like 2026-02-03T18:04:11.250+01:00",
        {"type": "string", "format": "date-time"},
    ),
    "revision": nullable(whole(1, 2**31 - 1)),
    "session": nullable(KEY),
    "set": nullable(KEY),
    "body": Rule(lambda value: type(value) is dict, "an object", {"type": "object"}),
}
"""Every entry has these fields and no others."""

_NAMES = frozenset(ENVELOPE)
_head = itemgetter(*(name for name in ENVELOPE if name != "body"))
_CHECKED = tuple(
    (name, rule.ok) for name, rule in ENVELOPE.items() if name not in ("v", "kind", "body")
)


def read_entry(raw: Any, device: str = "", position: int = 0) -> Entry | Trouble:
    """The entry, or why it is to be held; `device` and `position` are what the server adds."""
    trouble = _envelope_trouble(raw)
    if trouble is not None:
        return trouble
    kind = KINDS[raw["kind"]]
    trouble = _place_trouble(raw, kind) or _body_trouble(raw["body"], kind)
    return trouble or Entry(
        id=raw["id"],
        kind=raw["kind"],
        at=raw["at"],
        revision=as_whole(raw["revision"]),
        session=raw["session"],
        set=raw["set"],
        replaces=raw["replaces"],
        body=raw["body"],
        n=as_whole(raw["n"]),
        v=raw["v"],
        device=device,
        position=position,
    )


class Content(NamedTuple):
    """The one text of an entry's body (of the whole, where it has no right shape), and a digest.

    The digest is 128 bits that tell apart any two entries that differ in anything but the order
    of fields, and the spelling of `n` and `revision`: they are kept as whole numbers.
    """

    text: str
    digest: str


def content_of(raw: Any) -> Content:
    """What an entry says, in a form that can be compared and kept."""
    if type(raw) is dict and raw.keys() == _NAMES:
        text, head = _canonical(raw["body"]), ascii(_head(_with_whole_numbers(raw)))
    else:
        text, head = _canonical(raw), ""
    whole = f"{head}\n{text}".encode("ascii")
    return Content(text, hashlib.blake2b(whole, digest_size=16).hexdigest())


def as_whole(value: Any) -> Any:
    """1.0 as 1: what a database gives back of a revision, however the phone wrote it."""
    return int(value) if type(value) is float and value.is_integer() else value


def _with_whole_numbers(raw: dict[str, Any]) -> dict[str, Any]:
    n, revision = raw["n"], raw["revision"]
    if type(n) is float or type(revision) is float:
        return {**raw, "n": as_whole(n), "revision": as_whole(revision)}
    return raw


_canonical = json.JSONEncoder(sort_keys=True, separators=(",", ":")).encode


def envelope(entry: Entry) -> dict[str, Any]:
    """The entry as it goes out again."""
    return {
        "id": entry.id,
        "v": entry.v,
        "n": entry.n,
        "kind": entry.kind,
        "replaces": entry.replaces,
        "at": entry.at,
        "revision": entry.revision,
        "session": entry.session,
        "set": entry.set,
        "body": dict(entry.body),
    }


def json_schema() -> dict[str, Any]:
    """An entry as JSON Schema, draft 2020-12."""
    envelope_schemas = {name: dict(rule.schema) for name, rule in ENVELOPE.items()}
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "Entry",
        "type": "object",
        "properties": envelope_schemas,
        "required": sorted(ENVELOPE),
        "additionalProperties": False,
        "oneOf": [_kind_schema(name, kind) for name, kind in KINDS.items()],
    }


def _kind_schema(name: str, kind: Kind) -> dict[str, Any]:
    body = {
        "type": "object",
        "properties": {field: dict(rule.schema) for field, rule in kind.rules.items()},
        "required": sorted(kind.required),
        "additionalProperties": False,
    }
    owners = ("session", "set")[: kind.belongs]
    needs = {owner: {"type": "string"} for owner in owners}
    return {"properties": {"kind": {"const": name}, "body": body, **needs}}


def _envelope_trouble(raw: Any) -> Trouble | None:
    if type(raw) is not dict:
        return _bad("entry", f"{say(raw)} is no object", "an object with the fields of an entry")
    version = raw.get("v")
    if type(version) is int and version > VERSION:
        what = f"version {say(version)} is newer than this server"
        return Trouble(Code.NEWER_VERSION, "v", what, "a newer server will place it")
    if raw.keys() != _NAMES:
        return _wrong_names("entry", raw.keys() - _NAMES, _NAMES - raw.keys())
    for name, ok in _CHECKED:
        if not ok(raw[name]):
            return _bad(name, say(raw[name]), ENVELOPE[name].right)
    if version != VERSION or type(version) is not int:
        return _bad("v", say(version), f"a whole number up to {VERSION}")
    if type(raw["kind"]) is not str or raw["kind"] not in KINDS:
        what = f"{say(raw['kind'])} is no kind that this server knows"
        return Trouble(Code.UNKNOWN_KIND, "kind", what, "a newer server may place it")
    if type(raw["body"]) is not dict:
        return _bad("body", say(raw["body"]), ENVELOPE["body"].right)
    return None


def _place_trouble(raw: Mapping[str, Any], kind: Kind) -> Trouble | None:
    if kind.belongs >= Belongs.SESSION and raw["session"] is None:
        return _bad("session", "missing", f"{raw['kind']} needs the key of its session")
    if kind.belongs == Belongs.SET and raw["set"] is None:
        return _bad("set", "missing", f"{raw['kind']} needs the key of its set")
    return None


def _body_trouble(body: Mapping[str, Any], kind: Kind) -> Trouble | None:
    rules = kind.rules
    for name, value in body.items():
        rule = rules.get(name)
        if rule is None:
            return _wrong_names("body", {name}, frozenset())
        if not rule.ok(value):
            return _bad(f"body.{name}", say(value), rule.right)
    if not kind.required <= body.keys():
        return _wrong_names("body", frozenset(), kind.required - body.keys())
    return None


def _wrong_names(where: str, unknown: Any, missing: Any) -> Trouble:
    if unknown:
        names = ", ".join(sorted(say(name) for name in unknown)[:5])
        return _bad(where, f"{names} is not known here", "leave it out or correct its spelling")
    return _bad(where, f"{', '.join(sorted(missing)[:5])} is missing", "give every needed field")


def _bad(where: str, what: str, right: str) -> Trouble:
    return Trouble(Code.BAD_SHAPE, where, what, right)
