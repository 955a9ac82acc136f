"""The uses of the program, one function each. Time and randomness are passed in."""
