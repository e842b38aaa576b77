"""Setting a checkout up, with nothing but the standard library."""
