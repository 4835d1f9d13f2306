"""What ``meets`` says of two solid things in one place: always a stop, by geometry, nothing may be shared."""

from __future__ import annotations

from elevation.findings.limits import by_geometry
from elevation.findings.model import Finding, Weight
from elevation.room.model import Ref
from elevation.words import Message


def stop(subject: Ref, text: Message, by: float, at: tuple[float, float]) -> Finding:
    """The finding that ``subject`` stands ``by`` mm in something else, pointed at ``at`` on the wall."""
    return Finding("meets", Weight.STOP, subject, text, by_geometry(), measured_mm=-by, limit_mm=0.0, at=at)
