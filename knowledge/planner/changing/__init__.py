"""A plan changed: swaps, a running cook planned again, a thermometer read."""
