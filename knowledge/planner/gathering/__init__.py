"""What is at hand as a dinner: which foods, how much of each, for how many."""
