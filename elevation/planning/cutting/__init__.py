"""Cutting rods from stock: which piece from which bar, with as few bars as can be, and how sure that is."""
