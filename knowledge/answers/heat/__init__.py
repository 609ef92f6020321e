"""Safe core temperatures, and whose a temperature is."""
