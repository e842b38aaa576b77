"""Year: the curves of a season, and the ruler."""
