"""Sheets to work by: pages of text, tables and small drawings for the bench, the shop and the ladder."""
