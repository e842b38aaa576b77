"""The one room that writes SQL and knows the file."""
