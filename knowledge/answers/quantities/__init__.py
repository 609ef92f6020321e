"""Measures converted, recipes scaled, water for grains, servings, pots."""
