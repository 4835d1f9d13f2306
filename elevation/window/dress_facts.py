"""The form's rows of a pelmet or valance, and of a blind behind."""

from __future__ import annotations

from typing import Any

from elevation.findings.shapes import extremes, front_of
from elevation.room.dressing import usual_blind, usual_pelmet
from elevation.room.edits import replace_at
from elevation.room.model import Ref, Room, Treatment
from elevation.room.mounting import INSIDE
from elevation.session.session import Session
from elevation.window.fact_form import Fact
from elevation.window.texts import tr
from elevation.words import Message, msg

_CORDS = {
    "none": msg("none"), "loop": msg("a loop that hangs free"), "held-loop": msg("a loop held taut by a holder"),
    "cords": msg("loose cords"),
}  # fmt: skip


def _said(texts: dict[str, Message]) -> tuple[tuple[str, str], ...]:
    return tuple((key, tr(text)) for key, text in texts.items())


def pelmet_facts(session: Session, ref: Ref, treatment: Treatment) -> tuple[Fact, ...]:
    """Whether there is a pelmet before the treatment at ``ref``, and its measures where there is one."""
    if treatment.mount in INSIDE:
        return ()

    def put(room: Room, wanted: Any) -> Room:
        if not wanted:
            return replace_at(room, ref, pelmet=None)
        landed = next(one for one in session.set_out().treatments if one.ref == ref)
        panels = [panel for layer in landed.layers for panel in layer.panels]
        supports = [layer.support for layer in landed.layers]
        set_out, top = session.set_out(), max(one.height_mm for one in supports)
        left, right = min(one.metal_left_mm for one in supports), max(one.metal_right_mm for one in supports)
        under = extremes(set_out.ceiling, left, right)[0] - set_out.crown_mm
        made = usual_pelmet(
            room,
            max((panel.finished_length_mm or 0.0 for panel in panels), default=0.0),
            max((panel.heading_mm for panel in panels), default=0.0),
            max(max(one.left_mm - one.metal_left_mm, one.metal_right_mm - one.right_mm) for one in supports),
            max(front_of(layer) for layer in landed.layers),
            top - max(opening.glass_top_mm for opening in landed.openings),
            max(under - top, 0.0),
        )
        return replace_at(room, ref, pelmet=made)

    there = Fact(ref, "pelmet", msg("a pelmet or valance before it"), "flag", edit=put)
    title = Fact(ref, "", msg("Pelmet"), "title")
    if treatment.pelmet is None:
        return (title, there)
    kinds = _said({"board": msg("a stiff board"), "valance": msg("a valance of the front cloth")})
    return (
        title,
        there,
        Fact(ref, "pelmet.kind", msg("made as"), "choice", kinds),
        Fact(ref, "pelmet.depth", msg("depth, top to lower edge"), needed=True),
        Fact(ref, "pelmet.above", msg("top over the rod's centre"), needed=True),
        Fact(ref, "pelmet.left", msg("beyond the rod on the left"), needed=True),
        Fact(ref, "pelmet.right", msg("beyond the rod on the right"), needed=True),
        Fact(ref, "pelmet.projection", msg("wall to its front"), needed=True),
    )


def blind_facts(ref: Ref, treatment: Treatment) -> tuple[Fact, ...]:
    """Whether there is a blind behind the treatment at ``ref``, and its measures where there is one."""

    def put(room: Room, wanted: Any) -> Room:
        return replace_at(room, ref, blind=usual_blind(room) if wanted else None)

    there = Fact(ref, "blind", msg("a blind behind it"), "flag", edit=put)
    title = Fact(ref, "", msg("Blind"), "title")
    blind = treatment.blind
    if blind is None:
        return (title, there)
    places = _said({"reveal": msg("in the reveal"), "wall": msg("on the wall above")})
    facts = [
        title,
        there,
        Fact(ref, "blind.place", msg("its box hangs"), "choice", places),
        Fact(ref, "blind.height", msg("height of the box"), needed=True),
        Fact(
            ref,
            "blind.projection",
            msg("sash to the box's front") if blind.place == "reveal" else msg("wall to the box's front"),
            needed=True,
        ),
        Fact(ref, "blind.width", msg("width of the box, if different")),
    ]
    if blind.place == "wall":
        facts.append(Fact(ref, "blind.above", msg("box above the casing"), needed=True))
    facts += [
        Fact(ref, "blind.drop", msg("let down by")),
        Fact(ref, "blind.cord", msg("cord or chain"), "choice", _said(_CORDS)),
    ]
    if blind.cord != "none":
        sides = _said({"left": msg("the left"), "right": msg("the right")})
        facts.append(Fact(ref, "blind.cord_side", msg("cord on"), "choice", sides))
    return tuple(facts)
