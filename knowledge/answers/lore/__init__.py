"""What a food or a word is, notes on technique, seasons, pairings."""
