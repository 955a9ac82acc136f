"""What the athlete can lift, and what to lift next."""
