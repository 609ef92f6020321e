"""Times and cuts, computed; vessels and heat."""
