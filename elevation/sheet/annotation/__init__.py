"""Dimensions, held marks and finding marks around a wall."""

from elevation.sheet.annotation.model import FIGURE, RUNGS, Annotation, KeyLine
from elevation.sheet.annotation.whole import lay_annotation

__all__ = ["FIGURE", "RUNGS", "Annotation", "KeyLine", "lay_annotation"]
