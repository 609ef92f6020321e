"""The cautions that several answers end with, each said in one place."""

from __future__ import annotations

LOCAL_RULES = "Your local food-safety rules come first."
SHORT_LOCAL_RULES = "Your local rules come first."
STRICTER_LOCAL_RULES = "Where your local food-safety rules ask for more, they come first."
MEASURE = "Measure with a thermometer."
REHEAT_ONCE = "Reheat once to 74 °C / 165 °F."
IN_DOUBT = "In doubt throw it out; local rules come first (UK FSA, USDA FSIS)."
