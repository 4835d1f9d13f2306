"""Cautions of the sewing room, said wherever they matter (common practice, no source)."""

from __future__ import annotations

from elevation.words import msg

IRON = msg("A hot iron burns skin and cloth: try it on a scrap, stand it upright, unplug it before you leave.")
SHEARS = msg("Long shears are sharp: cut away from yourself, lay them down closed, out of reach of children.")
PINS = msg("Take every pin out before the needle reaches it: a needle that hits one breaks. Eyes!")
