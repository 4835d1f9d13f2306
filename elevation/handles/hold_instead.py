"""Hold something else at the same place: one click, and a later measurement moves the rest."""

from __future__ import annotations

from collections.abc import Callable

from elevation.errors import BadInput, NoSuch, said
from elevation.findings.model import INSIDE
from elevation.findings.shapes import height_at
from elevation.handles.context import exact
from elevation.room.corners import AROUND, angles_of, lead_ref
from elevation.room.edits import replace_at, replace_rod
from elevation.room.find import layer_of, opening_of, wall_of
from elevation.room.model import Held, Hem, Ref, Room
from elevation.setting_out.model import LayerOut, OpeningOut, SetOut, TreatmentOut
from elevation.setting_out.tilt import over_tops, under_line
from elevation.trade.mitres import mitre
from elevation.units import Length
from elevation.units.tolerance import TOUCH_MM

HOLDS: dict[str, tuple[str, ...]] = {
    "height": (
        "above-head",
        "above-casing",
        "below-ceiling",
        "above-floor",
        "bracket-drop",
        "below-head",
        "above-sill",
        "share-of-opening",
    ),
    "left": ("beyond-opening", "beyond-casing", "from-corner", "around-corner", "rod-length", "inside-opening"),
    "right": ("beyond-opening", "beyond-casing", "from-corner", "around-corner", "rod-length", "inside-opening"),
    "bracket": ("from-left-end", "from-right-end", "from-centre", "from-wall-left"),
    "hem": ("sill", "apron", "clear", "length"),
    "opening": ("left", "gap"),
}
"""What each thing may be held by, in the order in which a person is offered it."""

SHARE = 0.5
"""The share of the opening that a rod is held from at first: where sashes that slide up and down meet."""


def holds_for(which: str, mount: str, now: str) -> tuple[str, ...]:
    """The holds that make sense on a mount; what is held now is always among them.

    Parameters
    ----------
    which : str
        A key of ``HOLDS``.
    mount : str
    now : str
        What is held now.
    """
    inside = mount in INSIDE
    wrong = _OUTSIDE if inside else _WITHIN
    if mount != "ceiling":
        wrong |= {"bracket-drop"}
    return tuple(hold for hold in HOLDS[which] if hold == now or hold not in wrong)


_WITHIN = frozenset({"below-head", "above-sill", "share-of-opening", "inside-opening"})
_OUTSIDE = frozenset(
    {"above-head", "above-casing", "below-ceiling", "beyond-opening", "beyond-casing", "from-corner", "around-corner"}
)


def hold_instead(room: Room, set_out: SetOut, ref: Ref, which: str, hold: str) -> Room:
    """The room in which something else is held, and everything stays where it is.

    Parameters
    ----------
    room : Room
    set_out : SetOut
        The wall of ``room`` that ``ref`` lies on.
    ref : Ref
        A layer (``height``, ``left``, ``right``, ``hem``), a bracket or an opening.
    which : str
        A key of ``HOLDS``.
    hold : str
        One of its holds.

    Returns
    -------
    Room
        The figure is as exact as a quarter of a graduation can say it.

    Raises
    ------
    BadInput
        What it would be held from was not measured, or it stands on the wrong side of it.
    NoSuch
        ``ref`` or ``hold`` is not there.
    """
    if which not in HOLDS or hold not in HOLDS[which]:
        raise NoSuch(
            which,
            "",
            said("cannot be held by {hold}", hold=hold),
            said("use one of {choices}", choices=", ".join(HOLDS.get(which, ()))),
        )
    if which == "opening":
        return _hold_opening(room, set_out, ref, hold)
    treatment, layer = _layer(set_out, ref)
    if which == "height":
        refuse_leg(room, ref)
        figure_mm = _height_mm(set_out, treatment, layer, hold)
        return replace_rod(
            room, ref, height=_held(hold, exact(room, figure_mm, _same(layer_of(room, ref).rod.height, hold)))
        )
    if which == "bracket":
        return replace_at(room, ref, place=_held(hold, exact(room, _bracket_mm(layer, ref, hold))))
    if which == "hem":
        return _hold_hem(room, set_out, treatment, layer, hold)
    return _hold_end(room, set_out, treatment, layer, which, hold)


def refuse_leg(room: Room, ref: Ref) -> None:
    """Refuse to hold the height of a rod that goes on from another wall: what it would be held from stands there.

    Raises
    ------
    BadInput
        The rod begins on another wall.
    """
    if lead_ref(room, ref[:4]) != ref[:4]:
        raise BadInput("the rod", "", said("takes its height from the wall where it begins"), said("hold it there"))


def _held(hold: str, at: Length) -> Held:
    return Held(hold, at, SHARE if hold == "share-of-opening" else 0.0)  # type: ignore[arg-type]


def _same(held: Held, hold: str) -> Length | None:
    return held.at if held.hold == hold and held.share in (0.0, SHARE) else None


def _layer(set_out: SetOut, ref: Ref) -> tuple[TreatmentOut, LayerOut]:
    for treatment in set_out.treatments:
        for layer in treatment.layers:
            if layer.ref == ref[:4]:
                return treatment, layer
    raise NoSuch("/".join(ref), "", said("is not on this wall"))


def _height_mm(set_out: SetOut, treatment: TreatmentOut, layer: LayerOut, hold: str) -> float:
    support = layer.support
    if hold == "above-head":
        return over_tops(support, treatment.openings, with_casing=False)
    if hold == "above-casing":
        return over_tops(support, treatment.openings, with_casing=True)
    if hold == "above-floor":
        return support.height_mm
    top_mm = max(opening.top_mm for opening in treatment.openings)
    bottom_mm = min(opening.bottom_mm for opening in treatment.openings)
    if hold == "below-head":
        return -over_tops(support, treatment.openings, with_casing=False)
    if hold in ("above-sill", "share-of-opening"):
        share = SHARE if hold == "share-of-opening" else 0.0
        return support.height_mm - bottom_mm - share * (top_mm - bottom_mm)
    if not set_out.ceiling.known:
        raise BadInput(
            said("the ceiling"), "", said("has not been measured"), said("measure it first, then hold the rod below it")
        )
    ceiling_mm = under_line(support, set_out.ceiling) + support.height_mm
    if hold == "bracket-drop":
        figure_mm = ceiling_mm - support.drop_mm - support.height_mm
        if figure_mm < -TOUCH_MM:
            raise BadInput(
                said("the rod"),
                "",
                said("stands higher than these brackets hold it"),
                said("choose brackets with less drop"),
            )
        return max(figure_mm, 0.0)
    crown_mm = 0.0 if treatment.mount == "ceiling" else set_out.crown_mm
    return ceiling_mm - crown_mm - support.height_mm


def _hold_end(room: Room, set_out: SetOut, treatment: TreatmentOut, layer: LayerOut, side: str, hold: str) -> Room:
    rod = layer_of(room, layer.ref).rod
    own, other, other_side = (rod.left, rod.right, "right") if side == "left" else (rod.right, rod.left, "left")
    if hold == AROUND:
        figure = exact(room, short_of_corner(room, set_out, layer, side), _same(own, hold))
    else:
        figure = exact(room, _end_mm(set_out, treatment, layer, side, hold), _same(own, hold))
    fields = {side: _held(hold, figure)}
    if hold == "rod-length" and other.hold == "rod-length":
        # One end must say where the rod is.
        fields[other_side] = _held(
            "beyond-opening", exact(room, _end_mm(set_out, treatment, layer, other_side, "beyond-opening"))
        )
    return replace_rod(room, layer.ref, **fields)


def short_of_corner(room: Room, set_out: SetOut, layer: LayerOut, side: str) -> float:
    """How far a rod's end stands short of where its axis meets that of a rod round the corner, in mm."""
    left, right = angles_of(room, wall_of(room, set_out.wall))
    support = layer.support
    if side == "left":
        return support.left_mm - mitre(support.projection_mm, left)
    return set_out.width_mm - mitre(support.projection_mm, right) - support.right_mm


def _end_mm(set_out: SetOut, treatment: TreatmentOut, layer: LayerOut, side: str, hold: str) -> float:
    support = layer.support
    if hold == "rod-length":
        return support.right_mm - support.left_mm
    if hold == "from-corner":
        if side == "right" and not set_out.known_width:
            raise BadInput(
                said("the wall's width"),
                "",
                said("has not been measured"),
                said("measure it first, then hold the rod from there"),
            )
        return support.left_mm if side == "left" else set_out.width_mm - support.right_mm
    if side == "left":
        opening = treatment.openings[0]
        beyond_mm = opening.left_mm - support.left_mm
    else:
        opening = treatment.openings[-1]
        beyond_mm = support.right_mm - opening.right_mm
    if hold == "inside-opening":
        return -beyond_mm
    return beyond_mm - (opening.casing_mm if hold == "beyond-casing" else 0.0)


def _bracket_mm(layer: LayerOut, ref: Ref, hold: str) -> float:
    bracket = next((bracket for bracket in layer.brackets if bracket.ref == ref), None)
    if bracket is None:  # pragma: no cover - asked for brackets of that rod only
        raise NoSuch("/".join(ref), "", said("is no bracket of this rod"))
    support, x_mm = layer.support, bracket.x_mm
    from_mm: dict[str, Callable[[], float]] = {
        "from-left-end": lambda: x_mm - support.left_mm,
        "from-right-end": lambda: support.right_mm - x_mm,
        "from-centre": lambda: x_mm - (support.left_mm + support.right_mm) / 2,
        "from-wall-left": lambda: x_mm,
    }
    return from_mm[hold]()


def _hold_hem(room: Room, set_out: SetOut, treatment: TreatmentOut, layer: LayerOut, hold: str) -> Room:
    panel = next((panel for panel in layer.panels if panel.hem), None)
    if panel is None:
        raise BadInput(said("the hem"), "", said("has no panel to hang on"), said("add a panel first"))
    x_mm, y_mm = (panel.hem[0][0] + panel.hem[-1][0]) / 2, panel.hem_low_mm
    if hold == "clear":
        figure_mm = y_mm - height_at(set_out.floor, x_mm)
    elif hold == "length":
        figure_mm = panel.top_mm - y_mm
    elif hold == "sill":
        figure_mm = y_mm - min(opening.bottom_mm for opening in treatment.openings)
    else:
        figure_mm = min(_below_apron_mm(opening, y_mm) for opening in treatment.openings)
    if figure_mm < -TOUCH_MM:
        raise BadInput(
            said("the hem"), "", said("does not hang on that side of the {hold}", hold=hold), said("choose another target")
        )
    return replace_at(room, layer.ref, hem=Hem(hold, exact(room, max(figure_mm, 0.0))))  # type: ignore[arg-type]


def _below_apron_mm(opening: OpeningOut, y_mm: float) -> float:
    if opening.apron_mm <= 0:
        return opening.bottom_mm - y_mm
    stool_mm = opening.stool[0] if opening.stool is not None else 0.0
    return opening.bottom_mm - stool_mm - opening.apron_mm - y_mm


def _hold_opening(room: Room, set_out: SetOut, ref: Ref, hold: str) -> Room:
    own = opening_of(room, ref)
    index = next(i for i, opening in enumerate(set_out.openings) if opening.ref == ref[:2])
    landed = set_out.openings[index]
    if hold == "left":
        return replace_at(room, ref, left=exact(room, landed.left_mm, own.left), gap=None)
    before = set_out.openings[index - 1] if index else None
    edge_mm = before.right_mm + before.casing_mm if before is not None else 0.0
    gap_mm = landed.left_mm - landed.casing_mm - edge_mm
    if gap_mm < -TOUCH_MM:
        raise BadInput(said("the gap"), "", said("is less than nothing"), said("measure the openings again"))
    return replace_at(room, ref, gap=exact(room, max(gap_mm, 0.0), own.gap), left=None)
