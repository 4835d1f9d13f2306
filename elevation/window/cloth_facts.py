"""The rows of the form about cloth: what it is made of, what it weighs, and what a panel weighs on a scale."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from typing import Any

from msgspec.structs import replace

from elevation.errors import BadInput, said
from elevation.room.edits import edit_at
from elevation.room.find import layer_of, panel_of
from elevation.room.model import Fabric, Layer, Ref, Room
from elevation.room.validate import check_room
from elevation.trade.model import Trade
from elevation.units.mass import read_grams, read_kg, say_grams, say_kg
from elevation.window.fact_form import Fact
from elevation.window.texts import tr
from elevation.words import msg, term

_CONVENTIONS = {
    "all": msg("rod, overlap and returns"),
    "rod": msg("the rod; returns and hems are added"),
    "fixed": msg("the rod; a fixed sum is added"),
    "narrower": msg("all, each width less its selvedges"),
}


def made_of_facts(ref: Ref, trade: Trade) -> tuple[Fact, ...]:
    """The rows of a layer's cloth, lining and interlining."""
    return (
        Fact(ref, "fabric.row", msg("cloth"), "choice", _rows(trade, "face"), edit=partial(_with_row, ref, "row", trade)),
        Fact(
            ref,
            "fabric.lining",
            msg("lining"),
            "choice",
            _rows(trade, "lining"),
            edit=partial(_with_row, ref, "lining", trade),
        ),
        Fact(
            ref,
            "fabric.interlining",
            msg("interlining"),
            "choice",
            _rows(trade, "interlining"),
            edit=partial(_with_row, ref, "interlining", trade),
        ),
        Fact(
            ref,
            "fabric.grams",
            msg("cloth weighs (g/m² or oz/yd²)"),
            "text",
            edit=partial(_set_grams, ref),
            read=partial(_grams, ref),
        ),
        Fact(ref, "fabric.width", msg("cloth as wide as sold")),
        Fact(ref, "fabric.repeat", msg("pattern repeat, up the cloth")),
        Fact(ref, "fabric.half_drop", msg("half-drop pattern"), "flag"),
        Fact(ref, "fabric.one_way", msg("pile or print runs one way"), "flag"),
        Fact(ref, "fabric.railroaded", msg("turned on its side"), "flag"),
        Fact(
            ref,
            "fabric.shrinks",
            msg("shrinks in the wash by (%)"),
            "text",
            edit=partial(_set_shrinks, ref),
            read=partial(_shrinks, ref),
        ),
    )


def making_facts(ref: Ref) -> tuple[Fact, ...]:
    """The rows of how the panels are made up."""
    return (
        Fact(ref, "", msg("Making up"), "title"),
        Fact(
            ref,
            "making.fullness",
            msg("fullness wished"),
            "text",
            edit=partial(_set_fullness, ref),
            read=partial(_fullness, ref),
        ),
        Fact(ref, "making.returns", msg("outer edges return to the wall"), "flag"),
        Fact(ref, "making.heading", msg("turned in at the heading, if different")),
        Fact(ref, "making.hem", msg("turned in at the hem, if different")),
        Fact(ref, "making.washed_first", msg("washed before it is cut"), "flag"),
        Fact(ref, "making.settles", msg("hangs longer after some weeks by")),
    )


def convention_fact() -> Fact:
    """The row of the room's convention of fullness."""
    options = tuple((key, tr(text)) for key, text in _CONVENTIONS.items())
    return Fact((), "fullness_rule", msg("fullness multiplies"), "choice", options)


def scale_fact(ref: Ref) -> Fact:
    """The row of what one piece of a panel weighs on a scale."""
    return Fact(
        ref,
        "weight_kg",
        msg("a piece weighs, on a scale (kg or lb)"),
        "text",
        edit=partial(_set_kg, ref),
        read=partial(_kg, ref),
    )


def _rows(trade: Trade, kind: str) -> tuple[tuple[str, str], ...]:
    none = tr(msg("not known")) if kind == "face" else tr(msg("none"))
    return (("", none), *((row.id, tr(term(row.name))) for row in trade.fabrics.values() if row.kind == kind))


def _with_row(ref: Ref, key: str, trade: Trade, room: Room, value: Any) -> Room:
    """Cloth, lining or interlining chosen; the body follows what now makes it stack thickest."""

    def choose(fabric: Fabric) -> Fabric:
        made = replace(fabric, **{key: value or None})
        thickest = made.interlining or made.lining or made.row
        # What nobody knows keeps the body that was chosen by hand.
        return made if thickest is None else replace(made, body=trade.fabrics[thickest].body)

    return _edited(room, ref, lambda layer: replace(layer, fabric=choose(layer.fabric)))


def _set_grams(ref: Ref, room: Room, value: Any) -> Room:
    grams = read_grams(str(value), room.unit) if str(value).strip() else None
    return _edited(room, ref, lambda layer: replace(layer, fabric=replace(layer.fabric, grams=grams)))


def _set_shrinks(ref: Ref, room: Room, value: Any) -> Room:
    share = None if not str(value).strip() else _figure(str(value).strip().rstrip("%"), "3") / 100
    return _edited(room, ref, lambda layer: replace(layer, fabric=replace(layer.fabric, shrinks=share)))


def _shrinks(ref: Ref, room: Room) -> str:
    share = layer_of(room, ref).fabric.shrinks
    return "" if share is None else f"{share * 100:.4g}"


def _set_fullness(ref: Ref, room: Room, value: Any) -> Room:
    times = None if not str(value).strip() else _figure(str(value), "2.25")
    return _edited(room, ref, lambda layer: replace(layer, making=replace(layer.making, fullness=times)))


def _fullness(ref: Ref, room: Room) -> str:
    times = layer_of(room, ref).making.fullness
    return "" if times is None else f"{times:.4g}"


def _figure(text: str, like: str) -> float:
    """A bare figure, with a point or a comma."""
    try:
        return float(text.replace(",", "."))
    except ValueError:
        raise BadInput(
            "", "", said('"{text}" is no figure', text=text), said("write for example {like}", like=like)
        ) from None


def _edited(room: Room, ref: Ref, edit: Callable[[Layer], Layer]) -> Room:
    made = edit_at(room, ref, edit)
    check_room(made, "")
    return made


def _grams(ref: Ref, room: Room) -> str:
    grams = layer_of(room, ref).fabric.grams
    return "" if grams is None else say_grams(grams, room.unit)


def _set_kg(ref: Ref, room: Room, value: Any) -> Room:
    kg = read_kg(str(value), room.unit) if str(value).strip() else None
    made = edit_at(room, ref, lambda panel: replace(panel, weight_kg=kg))
    check_room(made, "")
    return made


def _kg(ref: Ref, room: Room) -> str:
    kg = panel_of(room, ref).weight_kg
    return "" if kg is None else say_kg(kg, room.unit)
