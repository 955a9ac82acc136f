"""What the desk reads of done work: load, volume, speed, and how the athlete says they are."""
