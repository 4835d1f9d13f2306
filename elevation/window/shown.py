"""What the canvas shows: the person's choice, apart from the room."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Literal

from msgspec import Struct

from elevation.sheet.records import LAYERS, Group

Cloth = Literal["open", "closed", "drawn"]
Light = Literal["drawn", "day", "evening"]
CLOTHS: tuple[Cloth, ...] = ("open", "closed", "drawn")


class Shown(Struct, frozen=True, gc=False):
    """Switches of the view.

    Attributes
    ----------
    cloth : str
        Panels ``open``, ``closed`` or as ``drawn`` just now.
    stack, dimensions, clearances : bool
        Outlines of the stack, dimensions, and clearances.
    zones, bands : bool
        What likely stands inside the wall, and where cables and pipes likely run.
    person : bool
        Somebody beside the window, at true height.
    sag : bool
        How the rods sag, drawn deeper than it is.
    guides : bool
        Lines of proportion: parts, middles, what is level and alike.
    light : str
        As ``drawn``, by ``day`` or in the ``evening``.
    unfolded : bool
        The walls round the corners beside it, laid flat.
    """

    cloth: Cloth = "open"
    stack: bool = False
    dimensions: bool = True
    clearances: bool = True
    zones: bool = False
    bands: bool = False
    sag: bool = False
    person: bool = False
    unfolded: bool = False
    guides: bool = False
    light: Light = "drawn"

    @property
    def layers(self) -> frozenset[str]:
        """The layers of the picture that are shown."""
        hidden = {f"panel-{cloth}" for cloth in CLOTHS if cloth != self.cloth}
        if not self.stack:
            hidden.add("stack")
        if not self.dimensions:
            # The mark of what is held stands at its figure: without the figure it marks nothing.
            hidden |= {"dimension", "held"}
        if not self.clearances:
            hidden.add("clearance")
        if not self.zones:
            hidden.add("zone")
        if not self.bands:
            hidden.add("band")
        if not self.person:
            hidden.add("person")
        if not self.sag:
            hidden.add("sag")
        if self.light == "drawn":
            hidden.add("light")
        if not self.guides:
            hidden.add("guide")
        return frozenset(LAYERS) - hidden

    def of(self, groups: Iterable[Group]) -> tuple[Group, ...]:
        """Those groups that are shown, back to front."""
        layers = self.layers
        return tuple(sorted((group for group in groups if group.layer in layers), key=_rank))


_RANKS = {layer: rank for rank, layer in enumerate(LAYERS)}


def _rank(group: Group) -> int:
    return _RANKS[group.layer]
