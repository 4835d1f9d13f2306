"""The measuring chain along a wall resolved: where every opening stands, and whether the measurements close."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from elevation.room.model import Opening, Wall
from elevation.setting_out.model import ChainOut, LinkOut
from elevation.units import Length
from elevation.units.tolerance import TOUCH_MM

MOST_AGAIN = 3


class Spot(Struct, frozen=True, gc=False):
    """Where an opening stands between its jambs, its number from the left, and whether that is known or shared out."""

    left_mm: float
    right_mm: float
    number: int
    placed: bool


class Resolved(Struct, frozen=True, gc=False):
    """The chain, a spot for every opening, and the wall's width (assumed where it was not measured)."""

    chain: ChainOut
    spots: tuple[Spot, ...]
    width_mm: float
    known_width: bool


class _Gap(Struct):
    # The clear wall before an opening, or after the last one.
    size_mm: float
    typed: bool
    certain: bool = True


class _Stretch(Struct, frozen=True, gc=False):
    # The gaps start..stop between two fixed places, and by how much their typed links are too long.
    start: int
    stop: int
    error_mm: float


def resolve(wall: Wall, graduation_mm: float = 0.0, assumed_gap_mm: float = 609.6) -> ChainOut:
    """The wall's measuring chain: every link where it stands, the closing error and which links to measure again."""
    return resolved(wall, graduation_mm, assumed_gap_mm).chain


def resolved(wall: Wall, graduation_mm: float, assumed_gap_mm: float) -> Resolved:
    """Resolve the chain of one wall.

    An opening is placed by its ``left``, or by its ``gap`` from what stands before it. Between two places that are fixed
    (the wall's ends and openings placed by ``left``) one blank gap is worked out; several share what is left evenly
    and the openings between them count as not placed. Where what was typed leaves less than nothing for the blank ones,
    they are nothing, and the excess is the closing error.

    Parameters
    ----------
    wall : Wall
    graduation_mm : float
        The tape's smallest mark: a chain that closes within it needs no second measuring.
    assumed_gap_mm : float
        What a blank gap is drawn as where the wall's width was not measured.
    """
    openings = wall.openings
    gaps = [_Gap(opening.gap.mm if opening.gap else 0.0, opening.gap is not None) for opening in openings]
    last = _Gap(wall.gap_right.mm if wall.gap_right else 0.0, wall.gap_right is not None)
    gaps.append(last)
    worst, start, start_mm = _Stretch(0, 0, 0.0), 0, 0.0
    for index, opening in enumerate(openings):
        if opening.left is not None:
            edge = opening.left.mm - _casing(opening)
            error = _fill(gaps, openings, start, index, edge - start_mm)
            worst = _worse(worst, _Stretch(start, index, error))
            start, start_mm = index + 1, opening.left.mm + opening.width.mm + _casing(opening)
    tail_full = all(gap.typed for gap in gaps[start:])
    error = _fill_last(gaps, openings, start, wall.width, start_mm, assumed_gap_mm)
    worst = _worse(worst, _Stretch(start, len(openings), error))
    links, spots, end_mm = _lay(wall, openings, gaps)
    known = (wall.width is not None and tail_full) or abs(worst.error_mm) > TOUCH_MM
    again = _again(wall, worst, graduation_mm) if known else ()
    chain = ChainOut(links, worst.error_mm if known else None, again)
    width = wall.width.mm if wall.width else end_mm
    return Resolved(chain, spots, width, wall.width is not None)


def _worse(one: _Stretch, other: _Stretch) -> _Stretch:
    return other if abs(other.error_mm) > abs(one.error_mm) else one


def _casing(opening: Opening) -> float:
    return opening.casing.mm if opening.casing else 0.0


def _overall(opening: Opening) -> float:
    return opening.width.mm + 2 * _casing(opening)


def _fill(gaps: list[_Gap], openings: Sequence[Opening], start: int, stop: int, room_mm: float) -> float:
    """Fill the blank gaps ``start..stop`` so that they and the openings between take ``room_mm``; return the error.

    An opening fixed at the far end stays where it is: when it is laid, the gap before it takes the error. The wall's end
    takes none: the last link reaches as far as it was typed.
    """
    taken = sum(_overall(opening) for opening in openings[start:stop])
    part = gaps[start : stop + 1]
    blanks = [gap for gap in part if not gap.typed]
    free = room_mm - taken - sum(gap.size_mm for gap in part if gap.typed)
    for gap in blanks:
        gap.size_mm = max(free, 0.0) / len(blanks)
        gap.certain = len(blanks) == 1
    return 0.0 if blanks and free >= 0 else -free


def _fill_last(
    gaps: list[_Gap], openings: Sequence[Opening], start: int, width: Length | None, start_mm: float, assumed_mm: float
) -> float:
    if width is not None:
        return _fill(gaps, openings, start, len(openings), width.mm - start_mm)
    for gap in gaps[start:]:
        if not gap.typed:
            gap.size_mm, gap.certain = assumed_mm, False
    return 0.0


def _lay(wall: Wall, openings: Sequence[Opening], gaps: list[_Gap]) -> tuple[tuple[LinkOut, ...], tuple[Spot, ...], float]:
    links: list[LinkOut] = []
    spots: list[Spot] = []
    x = 0.0
    from_left = _reached(openings, gaps)
    from_right = _reached_back(wall, openings, gaps)
    for index, opening in enumerate(openings):
        ref = (wall.id, opening.id)
        casing = _casing(opening)
        # A place given from the wall's end is taken as it was typed, not as a sum that comes back to it.
        left = opening.left.mm if opening.left else x + gaps[index].size_mm + casing
        right = left + opening.width.mm
        known = opening.casing is not None
        links.append(LinkOut(f"gap:{opening.id}", ref, x, left - casing, gaps[index].typed))
        links.append(LinkOut(f"casing-left:{opening.id}", ref, left - casing, left, known))
        links.append(LinkOut(f"width:{opening.id}", ref, left, right, typed=True))
        links.append(LinkOut(f"casing-right:{opening.id}", ref, right, right + casing, known))
        spots.append(Spot(left, right, index + 1, from_left[index] or from_right[index]))
        x = right + casing
    last = gaps[-1]
    links.append(LinkOut("gap-right", (wall.id,), x, x + last.size_mm, last.typed))
    return tuple(links), tuple(spots), x + last.size_mm


def _reached(openings: Sequence[Opening], gaps: list[_Gap]) -> list[bool]:
    found, sure = [], True
    for opening, gap in zip(openings, gaps, strict=False):
        sure = opening.left is not None or (sure and gap.certain)
        found.append(sure)
    return found


def _reached_back(wall: Wall, openings: Sequence[Opening], gaps: list[_Gap]) -> list[bool]:
    found, sure = [], wall.width is not None
    for index in reversed(range(len(openings))):
        sure = sure and gaps[index + 1].certain
        found.append(sure)
        sure = sure or openings[index].left is not None
    return found[::-1]


def _again(wall: Wall, stretch: _Stretch, graduation_mm: float) -> tuple[str, ...]:
    """The links to measure again: of the stretch that does not close, longest first, as a tape slips most over those."""
    error = stretch.error_mm
    if abs(error) <= graduation_mm + TOUCH_MM:
        return ()
    typed = _typed_in(wall, stretch)
    # Parts that are too long cannot be so by a link that is shorter than the error.
    able = [link for link in typed if link[1] >= error - TOUCH_MM] or typed
    able.sort(key=lambda link: -link[1])
    return tuple(key for key, _ in able[:MOST_AGAIN])


def _typed_in(wall: Wall, stretch: _Stretch) -> list[tuple[str, float]]:
    """Key and typed size in mm of every link that was measured between the two fixed places, from the left."""
    found: list[tuple[str, Length | None]] = []
    # An opening fixed by its left side has its width and right casing inside the stretch after it.
    for index in range(max(stretch.start - 1, 0), min(stretch.stop + 1, len(wall.openings))):
        opening = wall.openings[index]
        if index >= stretch.start:
            found += [(f"gap:{opening.id}", opening.gap), (f"casing-left:{opening.id}", opening.casing)]
        if index < stretch.stop:
            found += [(f"width:{opening.id}", opening.width), (f"casing-right:{opening.id}", opening.casing)]
    if stretch.stop == len(wall.openings):
        found.append(("gap-right", wall.gap_right))
    return [(key, length.mm) for key, length in found if length is not None]
