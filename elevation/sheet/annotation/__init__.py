"""Dimensions, held marks and finding marks around a wall."""

from elevation.sheet.annotation.model import FIGURE, RUNGS, Annotation, KeyLine
from elevation.sheet.annotation.whole import annotate, lay_annotation

__all__ = ["FIGURE", "RUNGS", "Annotation", "KeyLine", "annotate", "lay_annotation"]
