"""What a coach can prescribe."""
