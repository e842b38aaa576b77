"""Everything that is printed, made without Qt."""
