"""The rows for what was read once a rod was hung, in the order of the ladder's places."""

from __future__ import annotations

from elevation.room.model import Layer, Ref
from elevation.window.fact_form import Fact
from elevation.words import msg


def built_facts(ref: Ref, layer: Layer) -> tuple[Fact, ...]:
    """Readings of the layer at ``ref``; each takes the place of what was planned."""
    facts = [
        Fact(ref, "", msg("As built"), "title"),
        Fact(ref, "built.floor_left", msg("underside of the rod to the floor, left")),
        Fact(ref, "built.floor_middle", msg("underside of the rod to the floor, middle")),
        Fact(ref, "built.floor_right", msg("underside of the rod to the floor, right")),
    ]
    if len(layer.brackets) > 1:
        facts.append(Fact(ref, "built.bracket_to_bracket", msg("end bracket to end bracket, centres")))
    facts += [
        Fact((*ref, panel.id), "hung_length", msg("panel {number} as it hangs, top to hem", number=number))
        for number, panel in enumerate(layer.panels, 1)
    ]
    return tuple(facts)
