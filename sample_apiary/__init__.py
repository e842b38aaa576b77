"""The invented apiary that ships with the program, and what made it. Nothing here is anybody's bees."""
