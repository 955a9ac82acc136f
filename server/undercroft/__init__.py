"""Undercroft: a coach's program, worked out for one athlete's kit, done offline, brought back."""

__version__ = "0.1.0"
