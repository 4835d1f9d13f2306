"""The form's rows of tie-backs."""

from __future__ import annotations

from typing import Any

from msgspec.structs import replace

from elevation.room.edits import replace_at
from elevation.room.find import layer_of
from elevation.room.model import Layer, Ref, Room, TieBack
from elevation.units import length_of
from elevation.window.fact_form import Fact
from elevation.window.texts import tr
from elevation.words import msg

_THIRDS = {"third": 1 / 3, "two-thirds": 2 / 3}
_SAME = 1e-6
_FIRST_MM = 900.0
"""Where a tie-back is first held above the floor: about a sill's height (common practice, no source)."""


def tie_facts(ref: Ref, layer: Layer) -> tuple[Fact, ...]:
    """Whether the panels are tied back, and how.

    Parameters
    ----------
    ref : Ref
        The layer's.
    layer : Layer
    """
    if not layer.panels:
        return ()

    def put(room: Room, wanted: Any) -> Room:
        return replace_at(room, ref, tie=_first(room) if wanted else None)

    there = Fact(ref, "tie", msg("panels tied back"), "flag", edit=put)
    title = Fact(ref, "", msg("Tie-backs"), "title")
    if layer.tie is None:
        return (title, there)
    kinds = (("loop", tr(msg("a loop on a hook"))), ("arm", tr(msg("a fixed arm"))))
    heights = [
        ("third", tr(msg("a third of the drop up"))),
        ("two-thirds", tr(msg("two thirds of the drop up"))),
        ("above-floor", tr(msg("at a height above the floor"))),
    ]
    now = _height(layer.tie)
    if now not in {key for key, _ in heights}:
        heights.append((now, now))
    facts = [
        title,
        there,
        Fact(ref, "tie.kind", msg("held by"), "choice", kinds),
        Fact(
            ref,
            "tie.hold",
            msg("height"),
            "choice",
            tuple(heights),
            edit=lambda room, key: replace_at(room, ref, tie=_held(room, layer_of(room, ref).tie, key)),
            read=lambda room: _height(layer_of(room, ref).tie),
        ),
    ]
    if layer.tie.hold == "above-floor":
        facts.append(Fact(ref, "tie.at", msg("above the floor"), needed=True))
    return (
        *facts,
        Fact(ref, "tie.waist", msg("cloth at the tie-back, if not its stack")),
        Fact(ref, "tie.out", msg("hook beyond the panel's edge"), needed=True),
        Fact(ref, "tie.there", msg("hooks are in the wall already"), "flag"),
    )


def _first(room: Room) -> TieBack:
    return TieBack() if room.unit == "in" else TieBack(out=length_of(50.0, "mm", 1.0))


def _height(tie: TieBack | None) -> str:
    """The choice that a tie-back's height is: a third, two thirds, a height, or the share itself."""
    if tie is None or tie.hold == "above-floor":
        return "above-floor"
    return next((key for key, share in _THIRDS.items() if abs(share - tie.share) < _SAME), f"{tie.share:.3g}")


def _held(room: Room, tie: TieBack | None, key: str) -> TieBack | None:
    if tie is None:
        return None
    if key == "above-floor":
        at = tie.at if tie.at is not None else length_of(_FIRST_MM, room.unit, room.graduation_mm)
        return replace(tie, hold="above-floor", at=at)
    return replace(tie, hold="share-of-drop", share=_THIRDS.get(key, tie.share), at=None)
