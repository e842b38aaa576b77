"""The main window and what stands around the faces."""
