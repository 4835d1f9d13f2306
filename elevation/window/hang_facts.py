"""The rows of the form of what hangs: scheme, treatment, cloth, rod, hem, panels, brackets."""

from __future__ import annotations

from functools import partial
from typing import Any

from msgspec.structs import replace

from elevation.findings.naming import side_name
from elevation.room.corners import lead_ref
from elevation.room.edits import move_bracket, replace_rod
from elevation.room.find import bracket_of, layer_of
from elevation.room.model import Layer, Ref, Rod, Room, Wall
from elevation.room.mounting import INSIDE, mounted
from elevation.room.supports import hung_on, is_clip
from elevation.session.session import Session
from elevation.trade.model import Trade
from elevation.units import Length
from elevation.units.mass import read_kg, say_kg
from elevation.window.board_facts import board_facts
from elevation.window.built_facts import built_facts
from elevation.window.cloth_facts import made_of_facts, making_facts, scale_fact
from elevation.window.fact_form import Fact
from elevation.window.hang_edits import cover, is_covered, rename_colour
from elevation.window.holding import END_HOLDS, HEIGHT_HOLDS, end_holds, height_holds, hold_end, hold_height
from elevation.window.holds_facts import end_facts, fixing_facts, made_facts, strength_fact
from elevation.window.leg_facts import bend_facts, leg_facts
from elevation.window.made_of import drilling_caution
from elevation.window.texts import tr
from elevation.window.tie_facts import tie_facts
from elevation.window.tilt_facts import tilt_facts
from elevation.words import Message, msg, term

_BODIES = {
    "sheer": msg("sheer"), "light": msg("light"), "medium": msg("medium"), "lined": msg("lined"),
    "interlined": msg("interlined"),
}  # fmt: skip
_PATTERNS = {
    "plain": msg("plain"), "stripes": msg("stripes up the cloth"), "bands": msg("bands across it"),
    "check": msg("a check"), "grid": msg("a grid of fine lines"), "dots": msg("dots"),
}  # fmt: skip
_HEMS = {
    "sill": msg("at the sill"), "apron": msg("below the apron"), "clear": msg("clear of the floor"),
    "kiss": msg("kissing the floor"), "break": msg("breaking on the floor"), "puddle": msg("puddling on the floor"),
    "length": msg("a finished length"), "panel": msg("as long as the panel is"),
}  # fmt: skip
_MOUNTS = {
    "wall": msg("on the wall"), "ceiling": msg("on the ceiling"), "reveal": msg("in the reveal"),
    "sash": msg("on the sash"),
}  # fmt: skip
_TITLES = {"rod": msg("Rod"), "track": msg("Track"), "tension-rod": msg("Tension rod")}
_KINDS = {"rod": msg("a rod"), "track": msg("a track"), "tension-rod": msg("a tension rod")}
_SHARES = {
    "0.5": msg("a half"), "0.6666666666666666": msg("two thirds"), "0.75": msg("three quarters"), "1": msg("all of it"),
}  # fmt: skip
_PLACES = {
    "from-left-end": msg("in from the left end"), "from-right-end": msg("in from the right end"),
    "from-centre": msg("from the middle"), "from-wall-left": msg("from the wall's left end"),
}  # fmt: skip


def _said(texts: dict[str, Message]) -> tuple[tuple[str, str], ...]:
    return tuple((key, tr(text)) for key, text in texts.items())


def layer_facts(session: Session, ref: Ref, layer: Layer, mount: str, trade: Trade) -> tuple[Fact, ...]:
    """The rows of a layer's form."""
    return (
        *_cloth(ref, layer, trade),
        *making_facts(ref),
        *_rod(session, ref, layer, mount, trade),
        *_hem(ref, layer),
        *_panels(ref, layer),
        *tie_facts(ref, layer),
        *_brackets(session, ref, layer, mount, trade),
        *built_facts(ref, layer),
        *(board_facts(session, ref, layer) if mount == "wall" and layer.brackets else ()),
    )


def treatment_facts(room: Room, ref: Ref, wall: Wall, mount: str, trade: Trade) -> tuple[Fact, ...]:
    """The scheme's goal, and what the treatment is fixed to and covers."""

    def fix(room: Room, key: Any) -> Room:
        return mounted(room, ref, key, trade)

    facts = [
        Fact(ref[:2], "", msg("Scheme"), "title"),
        Fact(ref[:2], "clear_glass_to", msg("glass that open cloth may cover, each side")),
        Fact(ref, "", msg("Treatment"), "title"),
        Fact(ref, "name", msg("name of the treatment"), "text"),
        Fact(ref, "mount", msg("fixed"), "choice", _said(_MOUNTS), edit=fix),
        *leg_facts(room, ref),
    ]
    if mount in INSIDE:
        return tuple(facts)  # what hangs inside an opening covers that one
    facts += [
        Fact(
            ref,
            f"covers {opening.id}",
            msg("covers opening {number}", number=number),
            "flag",
            edit=partial(cover, ref, opening.id),
            read=partial(is_covered, ref, opening.id),
        )
        for number, opening in enumerate(wall.openings, 1)
    ]
    return tuple(facts)


def _pattern(ref: Ref, layer: Layer) -> tuple[Fact, ...]:
    """Colour and repeat across of a pattern; its repeat up the cloth is asked with the cloth that is bought."""
    if layer.fabric.pattern == "plain":
        return ()
    return (
        Fact(ref, "fabric.ink", msg("colour of the pattern"), "colour", edit=partial(rename_colour, ref, "ink")),
        Fact(ref, "fabric.repeat_across", msg("pattern repeat, across the cloth")),
    )


def _cloth(ref: Ref, layer: Layer, trade: Trade) -> tuple[Fact, ...]:
    headings = [((row.id, tr(term(row.name))), row.is_common) for row in trade.headings.values()]
    common, seldom = (tuple(pair for pair, is_common in headings if is_common is wanted) for wanted in (True, False))
    return (
        Fact(ref, "", msg("Cloth"), "title"),
        Fact(ref, "fabric.name", msg("name of the cloth"), "text"),
        Fact(ref, "fabric.colour", msg("colour"), "colour", edit=partial(rename_colour, ref, "colour")),
        Fact(ref, "fabric.pattern", msg("pattern"), "choice", _said(_PATTERNS)),
        *_pattern(ref, layer),
        *made_of_facts(ref, trade),
        Fact(ref, "fabric.body", msg("body"), "choice", _said(_BODIES)),
        Fact(ref, "heading", msg("heading"), "choice", common, more=seldom),
        Fact(ref, "ring", msg("ring or eyelet, clear width inside")),
        Fact(ref, "drop", msg("rod's centre to the top of the cloth, if measured")),
    )


def _rod(session: Session, ref: Ref, layer: Layer, mount: str, trade: Trade) -> tuple[Fact, ...]:
    sections = tuple((row.id, tr(term(row.name))) for row in trade.sections.values())
    rod = layer.rod

    def hold(room: Room, key: Any) -> Room:
        return hold_height(room, session.set_out(), ref, key)

    def hang(room: Room, key: Any) -> Room:
        landed = next(one for one in session.set_out().treatments if one.ref == ref[:3])
        long_mm = next(one.support.length_mm for one in landed.layers if one.ref == ref)
        return hung_on(room, ref, key, long_mm, trade)

    def hold_left(room: Room, key: Any) -> Room:
        return hold_end(room, session.set_out(), ref, "left", key)

    def hold_right(room: Room, key: Any) -> Room:
        return hold_end(room, session.set_out(), ref, "right", key)

    # What all legs of a treatment have in common is read and written where it begins.
    lead = lead_ref(session.room, ref)
    first = layer_of(session.room, lead).rod
    return (
        Fact(ref, "", _TITLES[rod.kind], "title"),
        Fact(lead, "rod.height.at", msg("height, {held}", held=HEIGHT_HOLDS[first.height.hold]), needed=True),
        Fact(
            lead,
            "rod.height.hold",
            msg("hold the height"),
            "choice",
            _said(height_holds(mount, first.height.hold)),
            edit=hold,
        ),
        *_share(ref, rod),
        *tilt_facts(session, ref),
        Fact(ref, "rod.left.at", msg("left end, {held}", held=END_HOLDS[rod.left.hold]), needed=True),
        Fact(
            ref, "rod.left.hold", msg("hold the left end"), "choice", _said(end_holds(mount, rod.left.hold)), edit=hold_left
        ),
        Fact(ref, "rod.right.at", msg("right end, {held}", held=END_HOLDS[rod.right.hold]), needed=True),
        Fact(
            ref,
            "rod.right.hold",
            msg("hold the right end"),
            "choice",
            _said(end_holds(mount, rod.right.hold)),
            edit=hold_right,
        ),
        Fact(ref, "rod.kind", msg("hangs on"), "choice", _said(_KINDS), edit=hang),
        *_packet(ref, rod),
        *bend_facts(session, lead, first),
        Fact(lead, "rod.section", msg("section"), "choice", sections),
        Fact(lead, "rod.diameter", msg("diameter, if different")),
        *made_facts(lead, trade),
        Fact(
            lead,
            "rod.projection",
            msg("sash to the rod's centre") if mount in INSIDE else msg("wall to the rod's centre"),
            needed=True,
        ),
        *_ends(session, ref, rod, trade),
    )


def _packet(ref: Ref, rod: Rod) -> tuple[Fact, ...]:
    """What the packet of a track or a tension rod says."""
    if rod.kind == "track":
        return (
            Fact(ref, "rod.packet.spacing", msg("fixings apart at most, as its sheet says")),
            Fact(ref, "rod.packet.stack", msg("a panel stacks to, as its sheet says")),
            Fact(ref, "rod.overlap", msg("leading edges overlap by")),
            Fact(ref, "rod.packet.arm", msg("its overlap arm gives (0: it has none)")),
        )
    if rod.kind == "tension-rod":

        def hold(room: Room, value: Any) -> Room:
            kg = read_kg(str(value), room.unit) if str(value).strip() else None
            now = layer_of(room, ref).rod.packet
            return replace_rod(room, ref, packet=replace(now, holds_kg=kg))

        def held(room: Room) -> str:
            kg = layer_of(room, ref).rod.packet.holds_kg
            return "" if kg is None else say_kg(kg, room.unit)

        return (
            Fact(ref, "rod.packet.least", msg("packet: from jamb to jamb at least")),
            Fact(ref, "rod.packet.most", msg("packet: from jamb to jamb at most")),
            Fact(ref, "rod.packet.holds_kg", msg("packet: holds (kg or lb)"), "text", edit=hold, read=held),
        )
    return () if rod.overlap is None else (Fact(ref, "rod.overlap", msg("leading edges overlap by")),)


def _ends(session: Session, ref: Ref, rod: Rod, trade: Trade) -> tuple[Fact, ...]:
    """How a rod or a track ends, and what it is cut from; a tension rod has neither."""
    if rod.kind == "tension-rod":
        return ()
    ends = tuple((row.id, tr(term(row.name))) for row in trade.ends.values())
    own_ends = (("", tr(msg("the same"))), *ends)
    left, right = partial(_own_end, ref, "left_ends"), partial(_own_end, ref, "right_ends")
    return (
        Fact(ref, "rod.ends", msg("ends"), "choice", ends),
        Fact(ref, "rod.left_ends", msg("left end, if different"), "choice", own_ends, edit=left),
        Fact(ref, "rod.right_ends", msg("right end, if different"), "choice", own_ends, edit=right),
        *end_facts(session, ref, rod, trade),
        Fact(ref, "rod.stock", msg("longest piece at hand")),
    )


def _own_end(ref: Ref, field: str, room: Room, key: Any) -> Room:
    """One end of its own; none, and it ends like the other."""
    return replace_rod(room, ref, **{field: key or None})


def _share(ref: Ref, rod: Rod) -> tuple[Fact, ...]:
    """The share that a rod's height is held from, where it is."""
    if rod.height.hold != "share-of-opening":
        return ()

    def read(room: Room) -> str:
        return f"{layer_of(room, ref).rod.height.share:.16g}"

    def write(room: Room, key: Any) -> Room:
        return replace_rod(room, ref, height=replace(layer_of(room, ref).rod.height, share=float(key)))

    shares = _said(_SHARES)
    now = f"{rod.height.share:.16g}"
    if now not in _SHARES:
        shares = (*shares, (now, now))
    return (Fact(ref, "rod.height.share", msg("share of the opening"), "choice", shares, edit=write, read=read),)


def _hem(ref: Ref, layer: Layer) -> tuple[Fact, ...]:
    facts = [Fact(ref, "", msg("Hem"), "title"), Fact(ref, "hem.target", msg("hem"), "choice", _said(_HEMS))]
    if layer.hem.target not in ("kiss", "panel"):
        facts.append(Fact(ref, "hem.at", msg("by how much")))
    return tuple(facts)


def _panels(ref: Ref, layer: Layer) -> tuple[Fact, ...]:
    facts: list[Fact] = []
    parks = [("left", tr(msg("the left"))), ("right", tr(msg("the right")))]
    for number, bracket in enumerate(layer.brackets, 1):
        parks.append((f"left-of:{bracket.id}", tr(msg("left of bracket {number}", number=number))))
        parks.append((f"right-of:{bracket.id}", tr(msg("right of bracket {number}", number=number))))
    for number, panel in enumerate(layer.panels, 1):
        here = (*ref, panel.id)
        title = msg("Panel {number}", number=number)
        if panel.parks in ("left", "right"):
            title = msg("Panel {number}, {side}", number=number, side=tr(side_name(panel.parks)))
        facts += [
            Fact(here, "", title, "title"),
            Fact(here, "flat_width", msg("flat width of a piece"), needed=True),
            Fact(here, "count", msg("pieces side by side"), "count"),
            Fact(here, "label_length", msg("length on the packet")),
            Fact(here, "measured_length", msg("length measured")),
            Fact(here, "parks", msg("parks at"), "choice", tuple(parks)),
            Fact(here, "stationary", msg("never draws"), "flag"),
            Fact(here, "drawn", msg("drawn out by")),
            Fact(here, "stack", msg("stack, squeezed and measured")),
            scale_fact(here),
        ]
    return tuple(facts)


def _put_bracket(session: Session, ref: Ref, room: Room, value: Length) -> Room:
    """The bracket where its figure says, as a drag puts it there: the reading of where both ends stood goes."""
    laid = next(
        layer for treatment in session.set_out().treatments for layer in treatment.layers if layer.ref == ref[:4]
    ).brackets
    in_order = sorted(laid, key=lambda bracket: bracket.x_mm)
    place = replace(bracket_of(room, ref).place, at=value)
    return move_bracket(room, ref, place, is_end=ref in (in_order[0].ref, in_order[-1].ref))


def _brackets(session: Session, ref: Ref, layer: Layer, mount: str, trade: Trade) -> tuple[Fact, ...]:
    like = {"wall" if mount == "reveal" else mount, "layer"}
    used = {bracket.kit for bracket in layer.brackets}
    is_track = layer.rod.kind == "track"
    fits = {row.id for row in trade.brackets.values() if row.mount in like and is_clip(row.id) == is_track}
    rows = (row for row in trade.brackets.values() if row.id in fits | used)
    kits = tuple((row.id, tr(term(row.name))) for row in rows)
    facts: list[Fact] = []
    if layer.brackets:
        facts.append(Fact(ref, "", drilling_caution(), "note"))
    for number, bracket in enumerate(layer.brackets, 1):
        here = (*ref, bracket.id)
        facts += [
            Fact(here, "", msg("Bracket {number}", number=number), "title"),
            Fact(
                here,
                "place.at",
                msg("place, {held}", held=_PLACES.get(bracket.place.hold, msg("held"))),
                needed=True,
                edit=partial(_put_bracket, session, here),
            ),
            Fact(here, "place.hold", msg("measured"), "choice", _said(_PLACES)),
            Fact(here, "kit", msg("kit"), "choice", kits),
            *fixing_facts(here, trade),
            strength_fact(session, here),
            Fact(here, "height", msg("height as built")),
            Fact(here, "there", msg("it hung there before"), "flag"),
        ]
    return tuple(facts)
