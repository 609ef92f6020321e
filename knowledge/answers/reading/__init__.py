"""A question's text -> foods, numbers, measures, temperatures, hours; words put right."""
