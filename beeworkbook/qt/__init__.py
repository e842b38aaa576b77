"""What the Qt faces share, and no more."""
