"""What can hurt: food out of the cold, failed cold, raw food, poisons, and the net under every answer."""
