"""A planted error of 1 in: whoever has the hanging sheet alone finds it, figure by figure, by adding up what stands there.

The reader below knows nothing of the program: it reads texts of the page as a person would, adds, and compares.
"""

from __future__ import annotations

import re
import unicodedata

import pytest
from msgspec.structs import replace

from elevation.places import demo_rooms
from elevation.planning.dressed import dress
from elevation.room.file import load_room
from elevation.room.model import Room
from elevation.sheet.every import elevation_pages
from elevation.sheet.work.whole import hanging_pages
from elevation.trade.tables import load_trade
from tests.sheet.pages import texts
from tests.strategies import random_room

TRADE = load_trade()
FIGURE = r"([-−]?\d+(?: \d+/\d+)?|[-−]?\d+/\d+)[+−]?(?: in| mm)?"
_FRACTION = re.compile("([⁰¹²³⁴-⁹]+)\u2044([₀-₉]+)")
SUM = re.compile(rf"{FIGURE} ([a-z' ]+?) \+ {FIGURE} ([a-z' ]+?) = {FIGURE}")
BESIDE = re.compile(rf"{FIGURE} (left|right) of [^;]*?, itself {FIGURE} from the left end")
AXIS = re.compile(rf"check it down from the ceiling\. {FIGURE} over the floor(?: {FIGURE} under the ceiling)?")
RIGHT_THERE = re.compile(rf"at bracket (\d+): {FIGURE} over the floor right there")


def plain(text: str) -> str:
    """Set fractions as `` 3/8``, line ends as spaces."""

    def part(found: re.Match[str]) -> str:
        return " " + "/".join(unicodedata.normalize("NFKC", one) for one in found.groups())

    return " ".join(_FRACTION.sub(part, text).split())


def value(figure: str) -> float:
    whole = 0.0
    for part in figure.lstrip("-−").split():
        top, _, bottom = part.partition("/")
        whole += float(top) / float(bottom) if bottom else float(part)
    return -whole if figure.startswith(("-", "−")) else whole


def contradictions(sheet: str, graduation: float) -> list[str]:
    """What does not add up on one sheet; a mark of the tape is forgiven where three figures are each rounded."""
    found: list[str] = []
    uprights: list[tuple[float, float]] = []
    middles: list[float] = []
    widths: set[float] = set()
    for first, where, second, _, whole in SUM.findall(sheet):
        a, b, c = value(first), value(second), value(whole)
        if abs(a + b - c) > 1e-9:
            found.append(f"{first} + {second} is not {whole}")
        if "end" in where or "jamb" in where:
            middles.append(a)
            if "end" in where:
                widths.add(c)
        else:
            uprights.append((a, b))
    if len(widths) > 1:
        found.append(f"the wall has two widths: {widths}")
    edges = [(value(away), side, value(edge)) for away, side, edge in BESIDE.findall(sheet)]
    for middle, (away, side, edge) in zip(middles, edges, strict=False):
        if abs(middle + (away if side == "left" else -away) - edge) > 1.51 * graduation:
            found.append(f"{middle} and {away} do not meet at {edge}")
    for over, under in AXIS.findall(sheet):
        if uprights and (abs(value(over) - uprights[0][0]) > 1e-9 or (under and abs(value(under) - uprights[0][1]) > 1e-9)):
            found.append(f"the axis is at {over} and at {uprights[0]}")
    for mark, over in RIGHT_THERE.findall(sheet):
        if int(mark) <= len(uprights) and abs(value(over) - uprights[int(mark) - 1][0]) > 1e-9:
            found.append(f"bracket {mark} is at {over} and at {uprights[int(mark) - 1]}")
    return found


def sheets_of(room: Room) -> list[str]:
    """The text of each treatment's sheet, all its pages in their order, in English."""
    found: list[str] = []
    for page in hanging_pages([dress(replace(room, language="en"), TRADE)], TRADE):
        said = " ".join(text.text for text in texts([page]))
        if re.search(r"Page [2-9]", page.title):
            found[-1] += " " + said
        else:
            found.append(said)
    return [plain(text) for text in found]


def figures_of_holes(sheet: str) -> list[tuple[int, int]]:
    """Where the figures stand that a hole is marked by."""
    spans: list[tuple[int, int]] = []
    for pattern in (SUM, BESIDE, AXIS, RIGHT_THERE):
        for found in pattern.finditer(sheet):
            for number in range(1, (pattern.groups or 0) + 1):
                text = found.group(number)
                if text and re.fullmatch(r"[-−0-9 /]+", text) and not (pattern is RIGHT_THERE and number == 1):
                    spans.append(found.span(number))
    return spans


def planted(sheet: str, span: tuple[int, int], by: float) -> str:
    """The sheet with one figure larger by 1 in."""
    text = sheet[span[0] : span[1]]
    lead = text[: len(text) - len(text.lstrip())]
    whole, *rest = text.split()
    bumped = f"{value(whole) + by:g}" if "/" not in whole else f"{by:g} {whole}"
    return sheet[: span[0]] + lead + " ".join((bumped, *rest)) + sheet[span[1] :]


ROOMS = ["1-bedroom", "4-flat", "7-guest-room", "2-living-room", "9-bay"]


@pytest.mark.parametrize("name", ROOMS)
def test_every_figure_of_a_hole_that_is_off_by_1_in_is_found_from_the_sheet_alone(name: str) -> None:
    room = load_room(demo_rooms() / f"{name}.room.json")
    inch = 1.0 if room.unit == "in" else 25.0
    graduation = room.graduation_mm / (25.4 if room.unit == "in" else 1.0)
    tried = 0
    for sheet in sheets_of(room):
        assert contradictions(sheet, graduation) == []
        for span in figures_of_holes(sheet):
            tried += 1
            wrong = planted(sheet, span, inch)
            assert contradictions(wrong, graduation), wrong[max(span[0] - 60, 0) : span[1] + 60]
    assert tried >= 10


@pytest.mark.parametrize("seed", range(12))
def test_sheets_of_random_rooms_do_not_contradict_themselves(seed: int) -> None:
    room = random_room(seed)
    graduation = room.graduation_mm / (25.4 if room.unit == "in" else 1.0)
    for sheet in sheets_of(room):
        assert contradictions(sheet, graduation) == []


def drawn_middles(room: Room) -> list[list[float]]:
    """Where each drawing of the room's elevations says that brackets stand, from the wall's left end."""
    found = []
    for page in elevation_pages([dress(replace(room, language="en"), TRADE)], TRADE):
        said = plain(" ".join(text.text for text in texts([page])))
        found += [
            [value(one) for one in re.findall(FIGURE, places)]
            for places in re.findall(r"Brackets ([-0-9 /,+−]+?) from the left end of the wall", said)
        ]
    return found


def disagree(drawn: list[float], sheet: str) -> bool:
    """Whether a drawing and a sheet have another place for some bracket, by more than a mark of the tape."""
    middles = [value(first) for first, where, *_ in SUM.findall(sheet) if "end" in where]
    return len(drawn) != len(middles) or any(abs(a - b) > 0.5 for a, b in zip(drawn, middles, strict=True))


@pytest.mark.parametrize("name", ["1-bedroom", "3-attic", "5-kitchen"])
def test_a_drawing_that_is_off_by_1_in_is_found_against_the_sheet(name: str) -> None:
    room = load_room(demo_rooms() / f"{name}.room.json")
    (sheet,) = sheets_of(room)
    (drawn,) = drawn_middles(room)
    assert len(drawn) >= 2
    assert not disagree(drawn, sheet)
    for at in range(len(drawn)):
        for by in (1.0, -1.0):
            assert disagree([*drawn[:at], drawn[at] + by, *drawn[at + 1 :]], sheet)


def test_the_bedroom_s_third_datum_by_hand() -> None:
    """The casing stands from 49 1/2 to 94 1/2 in: a 38 in opening, 53 in from the corner, in 3 1/2 in casing."""
    (sheet,) = sheets_of(load_room(demo_rooms() / "1-bedroom.room.json"))
    assert [value(edge) for _, _, edge in BESIDE.findall(sheet)] == [49.5, 94.5]
