"""Which place wins where several lie within reach of the pointer."""

from __future__ import annotations

HARD = 0
"""Something solid is in the way."""
RULE = 1
"""A rule's limit."""
NEIGHBOUR = 2
"""In line with something that stands there, or what the shop sells."""
PROPORTION = 3
"""A part of the whole, a middle, a symmetry."""
