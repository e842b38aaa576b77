"""Box and Bench: the combs of a visit, small and large."""
