"""The form's rows of what a shop asks for the whole treatment."""

from __future__ import annotations

from functools import partial
from typing import Any

from msgspec.structs import replace

from elevation.room.edits import replace_at
from elevation.room.find import treatment_of
from elevation.room.model import Offer, Ref, Room, Treatment
from elevation.room.validate import check_room
from elevation.units.money import read_money
from elevation.window.fact_form import Fact
from elevation.words import Message, msg

_MORE: dict[str, Message] = {
    "currency": msg("currency"),
    "place": msg("shop"),
    "date": msg("day, like 2026-03-31"),
}


def offer_facts(ref: Ref, treatment: Treatment) -> tuple[Fact, ...]:
    """What a shop asks for the treatment at ``ref``; where and when, once there is a price."""
    price = Fact(
        ref, "offer.price", msg("a shop's price for all of it"), "text", edit=partial(_price, ref), read=_said(ref)
    )
    title = Fact(ref, "", msg("To compare with"), "title")
    if treatment.offer is None:
        return (title, price)
    more = (Fact(ref, f"offer.{key}", name, "text", edit=partial(_more, ref, key)) for key, name in _MORE.items())
    return (title, price, *more)


def _said(ref: Ref) -> Any:
    def read(room: Room) -> str:
        offer = treatment_of(room, ref).offer
        return "" if offer is None else f"{offer.price:.2f}"

    return read


def _price(ref: Ref, room: Room, text: Any) -> Room:
    if not str(text).strip():
        return replace_at(room, ref, offer=None)
    amount = read_money(str(text))
    offer = treatment_of(room, ref).offer
    return replace_at(room, ref, offer=Offer(amount) if offer is None else replace(offer, price=amount))


def _more(ref: Ref, key: str, room: Room, text: Any) -> Room:
    offer = treatment_of(room, ref).offer
    if offer is None:
        return room
    made = replace_at(room, ref, offer=replace(offer, **{key: str(text).strip()}))
    check_room(made, "")
    return made
