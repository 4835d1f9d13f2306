"""What tie-backs may be."""

from __future__ import annotations

from elevation.errors import said
from elevation.room.bounds import FAR_MM, TALL_MM, Place, check_length
from elevation.room.model import TieBack

_MOST_OUT_MM = 500.0
"""No hook stands farther beside its panel."""


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
