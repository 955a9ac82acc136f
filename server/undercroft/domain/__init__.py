"""Pure computation: no I/O, no clock, no randomness of its own."""
