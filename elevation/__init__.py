"""Elevation: a to-scale sketch of a window wall, its curtain rod and its panels."""

__version__ = "0.1.0"
