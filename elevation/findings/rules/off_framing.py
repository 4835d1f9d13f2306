"""off-framing: brackets on board or lath that are at no stud, jack, king or header.

Consider; wall mounts, walls whose face hangs on studs. Board alone carries little, so the trade fixes into framing or puts
a board across it. Common practice, no source; where framing likely is comes from the set-out's zones. A bracket that hangs
already (its height is as built) is not judged.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial

from msgspec.structs import replace

from elevation.findings.changing import MOST_MOVE_MM, length, mark_up
from elevation.findings.costs import with_cost
from elevation.findings.limits import common_practice
from elevation.findings.looking import ends_of, layer_at, wall_of_scene
from elevation.findings.model import Change, Finding, Rule, Scene, Sticking, Weight
from elevation.findings.naming import where
from elevation.room.boards import usual_board, with_board
from elevation.room.edits import edit_at
from elevation.room.find import layer_of
from elevation.room.model import Bracket, Held, Layer, Ref, Room
from elevation.setting_out.framing import FRAMING
from elevation.setting_out.model import BoardOut, BracketOut, LayerOut, TreatmentOut, ZoneOut
from elevation.units.tolerance import TOUCH_MM
from elevation.words import Message, Mm, msg, msg_plural

NEEDED = 2
"""A board that lies across fewer pieces of framing turns or bends (common practice, no source)."""

PAST_MM = 50.8
"""A board reaches 2 in past the middle of its end brackets (common practice, no source)."""


def _hangs_on_studs(scene: Scene) -> bool:
    row = scene.trade.substrates.get(wall_of_scene(scene).substrate)
    return row is not None and row.build == "studs"


def framing_at(scene: Scene, bracket: BracketOut) -> tuple[ZoneOut, ...]:
    """The framing that stands at a bracket's height, wherever along the wall."""
    middle = (bracket.plate[1] + bracket.plate[3]) / 2
    return tuple(
        zone
        for zone in scene.set_out.zones
        if zone.kind in FRAMING and zone.bottom_mm - TOUCH_MM <= middle <= zone.top_mm + TOUCH_MM
    )


def _away(zone: ZoneOut, x: float) -> float:
    return max(zone.left_mm - x, x - zone.right_mm, 0.0)


def _target(zone: ZoneOut, x: float) -> float:
    """Where in a zone a screw goes: the middle of a stud; of a header the nearest place."""
    if zone.kind != "header":
        return (zone.left_mm + zone.right_mm) / 2
    return min(max(x, zone.left_mm), zone.right_mm)


def off_framing(scene: Scene, layer: LayerOut) -> tuple[tuple[BracketOut, ZoneOut | None], ...]:
    """The brackets of a layer that are at no framing, each with the framing nearest to it."""
    found = []
    for bracket in layer.brackets:
        if bracket.built:
            continue
        zones = framing_at(scene, bracket)
        nearest = min(zones, key=lambda zone: _away(zone, bracket.x_mm), default=None)
        if nearest is None or _away(nearest, bracket.x_mm) > TOUCH_MM:
            found.append((bracket, nearest))
    return tuple(found)


def _crossed(scene: Scene, board: BoardOut) -> int:
    """How many pieces of framing a board lies across; a header is long enough to take both its ends."""
    middle = (board.bottom_mm + board.top_mm) / 2
    count = 0
    for zone in scene.set_out.zones:
        is_at = zone.kind in FRAMING and zone.bottom_mm <= middle <= zone.top_mm
        if is_at and zone.left_mm >= board.left_mm - TOUCH_MM and zone.right_mm <= board.right_mm + TOUCH_MM:
            count += NEEDED if zone.kind == "header" else 1
    return count


def _of_board(scene: Scene, treatment: TreatmentOut, layer: LayerOut, board: BoardOut) -> Iterator[Finding]:
    count = _crossed(scene, board)
    if count < NEEDED:
        yield Finding(
            "off-framing",
            Weight.CONSIDER,
            layer.ref,
            msg_plural(
                "{where}: the mounting board lies across {count} piece of framing; it takes two or more.",
                "{where}: the mounting board lies across {count} pieces of framing; it takes two or more.",
                count=count,
                where=where(treatment),
            ),
            common_practice(),
            at=(board.left_mm, board.top_mm),
            caution=_caution(),
        )


def _caution() -> Message:
    return msg("Framing drawn dashed is only likely: probe to confirm, and detect cables, before you drill.")


def _find(scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    if not _hangs_on_studs(scene):
        return
    for layer in treatment.layers:
        if layer.board is not None:
            yield from _of_board(scene, treatment, layer, layer.board)
            continue
        off = off_framing(scene, layer)
        if not off:
            continue
        ways = [_away(zone, bracket.x_mm) for bracket, zone in off if zone is not None]
        if ways:
            text = msg_plural(
                "{where}: a bracket is {by} from the nearest framing; board or lath alone carries little.",
                "{where}: {count} brackets are not at framing, the farthest is {by} from it; board or lath alone carries"
                " little.",
                count=len(off),
                where=where(treatment),
                by=Mm(max(ways)),
            )
        else:
            text = msg(
                "{where}: no framing is found or likely at its brackets; board or lath alone carries little.",
                where=where(treatment),
            )
        far = off[0][0]
        yield Finding(
            "off-framing",
            Weight.CONSIDER,
            layer.ref,
            text,
            common_practice(),
            measured_mm=max(ways) if ways else None,
            limit_mm=0.0,
            at=(far.x_mm, far.height_mm),
            caution=_caution(),
        )


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    layer = layer_at(scene, finding.subject)
    if layer.board is None:
        yield from _moves(scene, finding, layer)
    yield from _boards(scene, finding, layer)


def _boards(scene: Scene, finding: Finding, layer: LayerOut) -> Iterator[Change]:
    """A board across the brackets, or the one that is there made longer until it crosses two pieces of framing."""
    if not layer.brackets:  # pragma: no cover - the finding was made of a bracket
        return
    low = min(bracket.plate[1] for bracket in layer.brackets)
    high = max(bracket.plate[3] for bracket in layer.brackets)
    left = min(bracket.x_mm for bracket in layer.brackets)
    right = max(bracket.x_mm for bracket in layer.brackets)
    own = layer_of(scene.room, finding.subject).board
    middle = (low + high) / 2
    near = [
        zone
        for zone in scene.set_out.zones
        if zone.kind in FRAMING and zone.kind != "header" and zone.bottom_mm <= middle <= zone.top_mm
    ]
    # Across what lies between the end brackets, and on to the next framing on either side where it is near.
    beyond_left = [left - zone.left_mm for zone in near if 0 < left - zone.left_mm <= MOST_MOVE_MM]
    beyond_right = [zone.right_mm - right for zone in near if 0 < zone.right_mm - right <= MOST_MOVE_MM]
    plain = PAST_MM
    reaches = [(plain, plain)]
    if beyond_left and beyond_right:
        reaches.append((max(min(beyond_left), plain), max(min(beyond_right), plain)))
    for out_left, out_right in reaches:
        grad = scene.room.graduation_mm
        board = usual_board(scene.room, high - low, mark_up(out_left, grad), mark_up(out_right, grad))
        if own is not None:
            board = replace(board, height=own.height, thickness=own.thickness)
        label = msg("Put a mounting board across the framing, {thick} thick", thick=Mm(board.thickness.mm))
        if own is not None:
            label = msg("Make the mounting board reach the framing on both sides")
        yield Change(label, partial(with_board, ref=finding.subject, board=board))


def _moves(scene: Scene, finding: Finding, layer: LayerOut) -> Iterator[Change]:
    moves: dict[str, Held] = {}
    farthest = 0.0
    places = {bracket.id: bracket.place for bracket in layer_of(scene.room, finding.subject).brackets}
    for bracket, zone in off_framing(scene, layer):
        if zone is None:
            return
        by = _target(zone, bracket.x_mm) - bracket.x_mm
        inside = layer.support.left_mm <= bracket.x_mm + by <= layer.support.right_mm
        if abs(by) > MOST_MOVE_MM or not inside:
            return
        held = places[bracket.ref[-1]]
        at = length(scene, held.at.mm + (-by if held.hold == "from-right-end" else by))
        if at.mm < 0 and held.hold != "from-centre":
            return
        moves[bracket.ref[-1]] = Held(held.hold, at)
        farthest = max(farthest, abs(by))
    if moves:
        label = msg_plural(
            "Move the bracket {by} onto framing",
            "Move the {count} brackets onto framing, {by} at most",
            count=len(moves),
            by=Mm(farthest),
        )

        def edit(room: Room) -> Room:
            return _moved(room, finding.subject, moves)

        yield Change(with_cost(scene, layer.ref, label, edit), edit)


def _moved(room: Room, ref: Ref, moves: dict[str, Held]) -> Room:
    def put(layer: Layer) -> Layer:
        brackets: tuple[Bracket, ...] = tuple(
            replace(bracket, place=moves[bracket.id]) if bracket.id in moves else bracket for bracket in layer.brackets
        )
        return replace(layer, brackets=brackets)

    return edit_at(room, ref[:4], put)


def _ends(scene: Scene, layer: LayerOut) -> Iterator[Sticking]:
    """Where a rod's end brings its end bracket onto a stud that was found."""
    ends = ends_of(layer)
    if ends is None:
        return
    support = layer.support
    for axis, bracket, end in (("rod-left", ends[0], support.left_mm), ("rod-right", ends[1], support.right_mm)):
        for zone in framing_at(scene, bracket):
            if zone.is_found:
                middle = (zone.left_mm + zone.right_mm) / 2
                reason = msg("its end bracket on the stud found at {at}", at=Mm(middle))
                yield Sticking(axis, layer.ref, end + middle - bracket.x_mm, reason, 1)


def _stickings(scene: Scene, treatment: TreatmentOut) -> Iterator[Sticking]:
    for layer in treatment.layers:
        yield from _ends(scene, layer)
        for bracket in layer.brackets:
            for zone in framing_at(scene, bracket):
                if zone.kind == "header":
                    continue
                middle = (zone.left_mm + zone.right_mm) / 2
                at = Mm(middle)
                if zone.is_found:
                    reason = msg("the stud found at {at}", at=at)
                elif zone.kind == "stud":
                    reason = msg("a likely stud at {at}: probe to confirm", at=at)
                else:
                    reason = msg("likely wood beside the opening, at {at}: probe to confirm", at=at)
                yield Sticking("bracket", bracket.ref, middle, reason, 1)


# The nearest framing may be any way off.
RULE = Rule("off-framing", msg("brackets at framing"), _find, changes=_changes, stickings=_stickings, is_near=False)
