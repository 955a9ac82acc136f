"""Forces from things that hang, stretch, turn and run over pulleys."""
