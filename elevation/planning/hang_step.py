"""A step of work: what to do, its figures, what to beware of in it."""

from __future__ import annotations

from msgspec import Struct

from elevation.planning.drilling import DrillPlace
from elevation.planning.end_places import EndPlace
from elevation.words import Message


class HangStep(Struct, frozen=True):
    """One step: what to do, figures under it, what to beware of in it. ``places`` are marked or drilled in it.

    ``axes`` are places whose rod's axis is told from both sides, ``levels`` those where it is told over the floor alone:
    the sheet rounds these as it does in the table of places, so that one place has one figure.
    ``ends`` are sockets and bent tubes that are marked in it.
    """

    text: Message
    details: tuple[Message, ...] = ()
    cautions: tuple[Message, ...] = ()
    places: tuple[DrillPlace, ...] = ()
    axes: tuple[DrillPlace, ...] = ()
    levels: tuple[DrillPlace, ...] = ()
    ends: tuple[EndPlace, ...] = ()
