"""over-box: a bracket's wall plate over an outlet, a switch or a shelf, or where a cable or a pipe likely runs.

Broken over a box or shelf; consider in the set-out's bands: straight up, down and sideways from boxes and pipes, and
where a country usually lays cables. Detect first: no place outside the bands is called free. Wall mounts, every
arrangement. Common practice; the bands are from memory, to be confirmed.
"""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.changing import bracket_name, bracket_to, ends_or_end, rod_height
from elevation.findings.limits import authority_of
from elevation.findings.looking import bracket_at, ends_of, layer_at
from elevation.findings.model import Change, Finding, Rule, Scene, Weight
from elevation.findings.naming import obstacle_name, where
from elevation.findings.shapes import Rect, meet, shared
from elevation.room.boards import with_board
from elevation.room.model import Ref
from elevation.setting_out.framing import FRAMING
from elevation.setting_out.model import BandOut, BracketOut, LayerOut, ObstacleOut, TreatmentOut
from elevation.words import Message, Mm, msg, term

BOXES = frozenset({"outlet", "switch", "shelf"})


def _outline(obstacle: ObstacleOut) -> Rect:
    return obstacle.left_mm, obstacle.bottom_mm, obstacle.right_mm, obstacle.top_mm


def _reach(band: BandOut) -> Rect:
    return band.left_mm, band.bottom_mm, band.right_mm, band.top_mm


def _box(scene: Scene, bracket: BracketOut) -> ObstacleOut | None:
    """The box or shelf that a plate is over."""
    for obstacle in scene.set_out.obstacles:
        if obstacle.kind in BOXES and meet(_outline(obstacle), bracket.plate):
            return obstacle
    return None


def _band(scene: Scene, bracket: BracketOut, *, is_upright: bool) -> BandOut | None:
    """The first band that a plate is in: those of boxes and pipes stand before those of a country."""
    for band in scene.set_out.bands:
        if band.is_upright == is_upright and meet(_reach(band), bracket.plate):
            return band
    return None


def _lying(scene: Scene, layer: LayerOut) -> tuple[BandOut, BracketOut] | None:
    """The first lying band that a bracket still to be drilled is in, and that bracket."""
    for bracket in layer.brackets:
        band = None if bracket.built or bracket.is_there else _band(scene, bracket, is_upright=False)
        if band is not None:
            return band, bracket
    return None


def _obstacle(scene: Scene, band: BandOut) -> ObstacleOut:
    return next(obstacle for obstacle in scene.set_out.obstacles if obstacle.ref == band.ref)


def _band_text(scene: Scene, band: BandOut, at: Message, bracket: Message) -> Message:
    if band.row:
        usage = term(scene.trade.bands[band.row].name)
        params = {"where": at, "usage": usage, "bracket": bracket}
        return msg("{where}: cables are usually laid {usage}, where {bracket} is to be drilled.", **params)
    obstacle = obstacle_name(_obstacle(scene, band))
    params = {"where": at, "obstacle": obstacle, "bracket": bracket}
    if band.kind == "pipe":
        return msg("{where}: a pipe of {obstacle} likely runs where {bracket} is to be drilled.", **params)
    return msg("{where}: a cable of {obstacle} likely runs where {bracket} is to be drilled.", **params)


def _authority(scene: Scene, band: BandOut) -> Message:
    if band.row:
        return term(scene.trade.bands[band.row].authority)
    return authority_of(scene, "pipe-band" if band.kind == "pipe" else "cable-band")


def _find(scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    if not scene.set_out.obstacles and not scene.set_out.bands:
        return
    for layer in treatment.layers:
        if layer.board is not None:
            # Brackets are screwed to the board, and the board to the framing behind it.
            yield from _at_board(scene, treatment, layer)
            continue
        for bracket in layer.brackets:
            yield from _at_bracket(scene, treatment, bracket)
        lying = _lying(scene, layer)
        if lying is not None:
            # A band along the wall crosses the whole rod: it is told once.
            yield _likely(scene, treatment, *lying, layer.ref)


def board_band(scene: Scene, layer: LayerOut) -> BandOut | None:
    """The first band that a mounting board is to be screwed on in: where it crosses framing, else anywhere along it."""
    board = layer.board
    if board is None or all(bracket.built or bracket.is_there for bracket in layer.brackets):
        return None
    face = (board.left_mm, board.bottom_mm, board.right_mm, board.top_mm)
    wood = [
        (zone.left_mm, zone.bottom_mm, zone.right_mm, zone.top_mm) for zone in scene.set_out.zones if zone.kind in FRAMING
    ]
    fixed = [
        (max(rect[0], face[0]), max(rect[1], face[1]), min(rect[2], face[2]), min(rect[3], face[3]))
        for rect in wood
        if meet(rect, face)
    ]
    return next((band for band in scene.set_out.bands if any(meet(_reach(band), rect) for rect in fixed or [face])), None)


def _at_board(scene: Scene, treatment: TreatmentOut, layer: LayerOut) -> Iterator[Finding]:
    band, board = board_band(scene, layer), layer.board
    if band is not None and board is not None:
        if band.kind == "pipe":
            text = msg("{where}: a pipe likely runs where the mounting board is to be screwed on.", where=where(treatment))
        else:
            text = msg("{where}: a cable likely runs where the mounting board is to be screwed on.", where=where(treatment))
        at = ((max(band.left_mm, board.left_mm) + min(band.right_mm, board.right_mm)) / 2, board.bottom_mm)
        yield Finding("over-box", Weight.CONSIDER, layer.ref, text, _authority(scene, band), at=at, caution=_caution())


def _at_bracket(scene: Scene, treatment: TreatmentOut, bracket: BracketOut) -> Iterator[Finding]:
    box = _box(scene, bracket)
    if box is not None:
        by = shared(_outline(box), bracket.plate)
        text = msg(
            "{where}: the wall plate of {bracket} lies {by} over {obstacle}.",
            where=where(treatment),
            bracket=bracket_name(scene, bracket.ref),
            by=Mm(by),
            obstacle=obstacle_name(box),
        )
        at = (bracket.x_mm, bracket.height_mm)
        authority = authority_of(scene, "over-box")
        yield Finding("over-box", Weight.BROKEN, bracket.ref, text, authority, -by, 0.0, at, _caution())
        return
    band = None if bracket.built or bracket.is_there else _band(scene, bracket, is_upright=True)
    if band is not None:
        yield _likely(scene, treatment, band, bracket, bracket.ref)


def _likely(scene: Scene, treatment: TreatmentOut, band: BandOut, bracket: BracketOut, subject: Ref) -> Finding:
    text = _band_text(scene, band, where(treatment), bracket_name(scene, bracket.ref))
    at = (bracket.x_mm, bracket.height_mm)
    return Finding("over-box", Weight.CONSIDER, subject, text, _authority(scene, band), at=at, caution=_caution())


def _caution() -> Message:
    return msg("Switch the current off and find cables and pipes with a detector before you drill.")


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    if len(finding.subject) == 4:
        layer = layer_at(scene, finding.subject)
        band = board_band(scene, layer)
        if band is not None and layer.board is not None:
            up = layer.support.height_mm + band.top_mm - layer.board.bottom_mm
            down = layer.support.height_mm - (layer.board.top_mm - band.bottom_mm)
            if not band.is_upright:
                for wanted in sorted((up, down), key=lambda y: abs(y - layer.support.height_mm)):
                    yield from rod_height(scene, finding.subject, wanted)
            yield Change(msg("Take the mounting board away"), lambda room: with_board(room, finding.subject, None))
            return
        lying = _lying(scene, layer_at(scene, finding.subject))
        if lying is not None:  # pragma: no branch - the finding was made of it
            yield from _off_lying(scene, finding, *lying)
        return
    bracket = bracket_at(scene, finding.subject)
    box = _box(scene, bracket)
    band = _band(scene, bracket, is_upright=True)
    if box is not None:
        # Clear of the box and, where it has one, of its own cable up and down.
        own = [one for one in scene.set_out.bands if one.ref == box.ref and one.is_upright]
        yield from _aside(scene, finding, bracket, _reach(own[0]) if own else _outline(box))
        if not own:
            yield from rod_height(scene, finding.subject, bracket.height_mm + box.top_mm - bracket.plate[1])
    elif band is not None:  # pragma: no branch - the finding was made of one or the other
        yield from _aside(scene, finding, bracket, _reach(band))


def _off_lying(scene: Scene, finding: Finding, band: BandOut, bracket: BracketOut) -> Iterator[Change]:
    up = bracket.height_mm + band.top_mm - bracket.plate[1]
    down = bracket.height_mm - (bracket.plate[3] - band.bottom_mm)
    for wanted in sorted((up, down), key=lambda y: abs(y - bracket.height_mm)):
        yield from rod_height(scene, finding.subject, wanted)


def _aside(scene: Scene, finding: Finding, bracket: BracketOut, reach: Rect) -> Iterator[Change]:
    """Move a bracket, or the rod's ends with it, to either side of what it must clear."""
    to_left = bracket.x_mm - (bracket.plate[2] - reach[0])
    to_right = bracket.x_mm + reach[2] - bracket.plate[0]
    for wanted in sorted((to_left, to_right), key=lambda x: (abs(x - bracket.x_mm), x)):
        yield from bracket_to(scene, finding.subject, wanted)
    ends = ends_of(layer_at(scene, finding.subject))
    if ends is not None and ends[0].ref == bracket.ref:
        yield from ends_or_end(scene, finding.subject, "left", bracket.x_mm - to_left)
        yield from ends_or_end(scene, finding.subject, "left", bracket.x_mm - to_right)
    if ends is not None and ends[1].ref == bracket.ref:
        yield from ends_or_end(scene, finding.subject, "right", to_right - bracket.x_mm)
        yield from ends_or_end(scene, finding.subject, "right", to_left - bracket.x_mm)


RULE = Rule("over-box", msg("brackets clear of boxes and cables"), _find, changes=_changes)
