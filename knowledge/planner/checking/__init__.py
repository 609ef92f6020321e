"""The finished plan checked from outside, by another route."""
