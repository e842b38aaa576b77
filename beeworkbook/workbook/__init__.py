"""The open workbook: edits, history, changes, exchange."""
