"""What a shop's offer may be."""

from __future__ import annotations

from datetime import date

from elevation.errors import said
from elevation.room.bounds import Place
from elevation.room.model import Offer
from elevation.room.nearest import quoted
from elevation.units.money import MOST

_LONGEST_CURRENCY = 8


def check_offer(offer: Offer, place: Place) -> None:
    """Refuse an offer that cannot be.

    Raises
    ------
    BadInput
        With the place of the first fault.
    """
    if not 0 <= offer.price <= MOST:
        raise place.at("price").bad(
            said("is {price}", price=offer.price), said("it must be from 0 to {most}", most=f"{MOST:.0f}")
        )
    if len(offer.currency) > _LONGEST_CURRENCY:
        raise place.at("currency").bad(
            said("is {value}", value=quoted(offer.currency)), said("write it short, for example USD or €")
        )
    if offer.date:
        try:
            date.fromisoformat(offer.date)
        except ValueError:
            raise place.at("date").bad(
                said("is {value}, which is no day", value=quoted(offer.date)), said("write for example 2026-03-31")
            ) from None
