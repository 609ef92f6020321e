"""Who may eat it: allergens, diets, what is in a food."""
