"""Round: an afternoon, a line a colony."""
