"""What to take instead of a food."""
