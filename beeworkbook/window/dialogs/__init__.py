"""The few questions that need a window of their own."""
