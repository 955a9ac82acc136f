"""Schemas made once for all.

To make one copies every field that it has, which takes longer than to read a small document by it.
A schema holds nothing of what it reads, so that threads may share it.
"""

from functools import cache

from marshmallow import Schema


@cache
def made(shape: type[Schema]) -> Schema:
    """The one schema of that shape."""
    return shape()
