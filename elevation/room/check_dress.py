"""What tie-backs, pelmets and blinds may be."""

from __future__ import annotations

from elevation.errors import said
from elevation.room.bounds import DEEP_MM, FAR_MM, TALL_MM, Place, check_length
from elevation.room.model import Blind, Pelmet, TieBack

_MOST_OUT_MM = 500.0
"""No hook stands farther beside its panel."""


_MOST_PELMET_MM = 2000.0
"""No pelmet stands higher over its rod."""

_MOST_BOX_MM = 500.0
"""No box of a blind is higher or deeper."""


def check_tie(tie: TieBack, place: Place) -> None:
    """Refuse a tie-back that cannot be.

    Raises
    ------
    BadInput
        With the place of the first fault.
    """
    if not 0 < tie.share < 1:
        raise place.at("share").bad(
            said("is {share}", share=tie.share), said("it must be more than 0 and less than 1, for example 0.33")
        )
    if tie.hold == "above-floor" and tie.at is None:
        raise place.bad(said('is held "above-floor" but has no "at"'), said("add its height above the floor"))
    check_length(tie.at, place.at("at"), 0, TALL_MM, above=True)
    check_length(tie.out, place.at("out"), 0, _MOST_OUT_MM)
    check_length(tie.waist, place.at("waist"), 0, FAR_MM, above=True)


def check_pelmet(pelmet: Pelmet, place: Place) -> None:
    """Refuse a pelmet or valance that cannot be.

    Raises
    ------
    BadInput
        With the place of the first fault.
    """
    check_length(pelmet.depth, place.at("depth"), 0, TALL_MM, above=True)
    check_length(pelmet.above, place.at("above"), -_MOST_PELMET_MM, _MOST_PELMET_MM)
    for key in ("left", "right"):
        check_length(getattr(pelmet, key), place.at(key), -FAR_MM, FAR_MM)
    check_length(pelmet.projection, place.at("projection"), 0, DEEP_MM, above=True)


def check_blind(blind: Blind, place: Place) -> None:
    """Refuse a blind that cannot be.

    Raises
    ------
    BadInput
        With the place of the first fault.
    """
    check_length(blind.height, place.at("height"), 0, _MOST_BOX_MM, above=True)
    check_length(blind.projection, place.at("projection"), 0, _MOST_BOX_MM, above=True)
    check_length(blind.width, place.at("width"), 0, FAR_MM, above=True)
    check_length(blind.above, place.at("above"), 0, TALL_MM)
    check_length(blind.drop, place.at("drop"), 0, TALL_MM)
