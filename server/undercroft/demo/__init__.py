"""An invented mountain-rescue team, its remote coach and what the volunteers did so far."""
