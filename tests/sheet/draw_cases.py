"""Walls set out by hand, for tests of the drawing: every kind of opening, heading, end and obstacle."""

from __future__ import annotations

from typing import get_args

from msgspec.structs import replace

from elevation.room.model import ObstacleKind
from elevation.setting_out.heads import arched, level, outline
from elevation.setting_out.model import (
    BracketOut,
    ChainOut,
    ClearancesOut,
    GlassOut,
    LayerOut,
    ObstacleOut,
    OpeningOut,
    PanelOut,
    Profile,
    SetOut,
    SupportOut,
    TreatmentOut,
)  # fmt: skip
from elevation.trade.model import AllowanceRow, EndRow, HeadingRow, Trade
from elevation.words import msg

IN = 25.4
HEADS = ("flat", "segmental", "half-round", "raked")
OBSTACLES = get_args(ObstacleKind)
HEADING_CASES = (
    ("clip-rings", 38.0, "rings"), ("pinch-pleat", 44.0, "pinch"), ("double-pinch", 44.0, "two-finger"),
    ("goblet", 44.0, "goblet"), ("cartridge", 44.0, "cartridge"), ("inverted", 44.0, "inverted"), ("box", 44.0, "box"),
    ("pencil-pleat", 40.0, "pencil"), ("wave", 40.0, "wave"), ("tab-top", 50.0, "tabs"), ("back-tab", -30.0, "back-tabs"),
    ("eyelet", -30.0, "eyelets"), ("rod-pocket", -28.0, "pocket"),
)  # fmt: skip
HEADINGS = tuple(row for row, _, _ in HEADING_CASES)


def make_trade() -> Trade:
    headings = {
        row: HeadingRow(
            row, row, drop, 150.0, "rings" if drop > 30 else "sleeve", 1.5, 2.0, 2.5, 100.0, 114.3, 130.0, 0.0,
            "flat-on-rings", "fixture", "from memory", drawing=drawing,
        )
        for row, drop, drawing in HEADING_CASES
    }  # fmt: skip
    ends = {
        "bare": EndRow("bare", "bare", 25.4, 0.0, 0.0, "none", "fixture", "from memory"),
        "cap": EndRow("cap", "cap", 0.0, 22.0, 26.0, "cap", "fixture", "from memory"),
        "ball-finial": EndRow("ball-finial", "ball", 0.0, 60.0, 48.0, "ball", "fixture", "from memory"),
        "spear-finial": EndRow("spear-finial", "spear", 0.0, 110.0, 46.0, "spear", "fixture", "from memory"),
    }
    up = AllowanceRow("lining-up", "lining above the face's hem", 1.5 * IN, "fixture", "from memory")
    return Trade(headings, {}, {}, ends, {}, {}, {}, allowances={up.id: up})


def make_opening(
    ident: str = "o1", left: float = 49 * IN, head: str = "flat", kind: str = "window", sash: str = "double-hung",
    width: float = 48 * IN, height: float = 54 * IN, sill: float = 31 * IN, **facts: object,
) -> OpeningOut:  # fmt: skip
    frame = float(facts.pop("frame_mm", 2 * IN))  # type: ignore[arg-type]
    casing = float(facts.pop("casing_mm", 3.5 * IN))  # type: ignore[arg-type]
    right, top = left + width, sill + height
    rise = {"segmental": 6 * IN, "half-round": width / 2}.get(head, 0.0)
    right_top = top - 14 * IN if head == "raked" else top - rise
    left_top = top - rise
    if rise:
        radius = ((width / 2) ** 2 + rise**2) / (2 * rise)
        centre = ((left + right) / 2, top - radius)
        glass = arched(left + frame, right - frame, sill + frame, *centre, radius - frame)
    else:
        glass = level(left + frame, right - frame, sill + frame, left_top - frame, right_top - frame)
    out = OpeningOut(
        ref=("w1", ident), number=int(ident[1:]), kind=kind, left_mm=left, right_mm=right, bottom_mm=sill, top_mm=top,
        head=head, rise_mm=rise, right_top_mm=right_top, casing_mm=casing, casing_top_mm=top + casing, frame_mm=frame,
        glass_left_mm=glass.left_mm, glass_right_mm=glass.right_mm, glass_bottom_mm=glass.bottom_mm,
        glass_top_mm=glass.top_mm, glass_area_mm2=0.0, glass=outline(glass), columns=1, rows=1, sash=sash, hinge="left",
        handle_out_mm=0.0, sweep=(), stool=(19.0, 19.0, 50.0) if kind == "window" else None,
        apron_mm=3.5 * IN if kind == "window" else 0.0, reveal_mm=None, escape=False, known_casing=True, placed=True,
        left_top_mm=left_top,
    )  # fmt: skip
    return replace(out, **facts)  # type: ignore[arg-type]


def make_panel(
    ident: str, side: str, open_: tuple[float, float], closed: tuple[float, float], drawn: tuple[float, float],
    top: float, hem: float = 0.5 * IN, folds: int = 9, **facts: object,
) -> PanelOut:  # fmt: skip
    out = PanelOut(
        ref=("w1", "s1", "t1", "l1", ident), flat_width_mm=54 * IN, count=1, finished_length_mm=top - hem, top_mm=top,
        heading_mm=38.0, side=side, stationary=False, parks_at_mm=open_[0] if side == "left" else open_[1],
        travel=(min(open_[0], closed[0]), max(open_[1], closed[1])), open=open_, closed=closed, drawn=drawn,
        rings=folds + 1, fullness=1.4, stack_low_mm=100.0, stack_mm=114.3, stack_high_mm=140.0,
        stack_basis=msg("by hand"), fold_count=folds, fold_depth_mm=40.0, hem=((drawn[0], hem), (drawn[1], hem)),
        hem_low_mm=hem, gap_low_mm=hem, gap_high_mm=hem, target_gap_mm=hem, cannot_pass=(),
    )  # fmt: skip
    return replace(out, **facts)  # type: ignore[arg-type]


def make_support(left: float, right: float, height: float, ends: str = "ball-finial", **facts: object) -> SupportOut:
    row = make_trade().ends[ends]
    cut_left, cut_right = left - row.extra_tube_mm, right + row.extra_tube_mm
    out = SupportOut(
        kind="rod", left_mm=left, right_mm=right, height_mm=height, length_mm=right - left, cut_left_mm=cut_left,
        cut_right_mm=cut_right, cut_length_mm=cut_right - cut_left, metal_left_mm=cut_left - row.length_mm,
        metal_right_mm=cut_right + row.length_mm, diameter_mm=23.4, projection_mm=88.9, ends=ends,
        finial_mm=row.length_mm, finial_diameter_mm=row.diameter_mm, splices_mm=(), splice_free=(), pieces=1,
    )  # fmt: skip
    return replace(out, **facts)  # type: ignore[arg-type]


def make_bracket(ident: str, x: float, y: float, *, passes: bool = False) -> BracketOut:
    return BracketOut(
        ref=("w1", "s1", "t1", "l1", ident), x_mm=x, height_mm=y, built=False, rings_pass=passes, half_width_mm=6.0,
        plate=(x - 12.7, y - 32.0, x + 12.7, y + 38.0), kit="shop-strap",
    )  # fmt: skip


def make_treatment(
    opening: OpeningOut, height: float = 90 * IN, heading: str = "clip-rings", colour: str = "#b9704a",
    body: str = "light", reach: float = 12 * IN, ends: str = "ball-finial", drawn: str = "open", ident: str = "t1",
    hem: float = 0.5 * IN, folds: int = 9, **facts: object,
) -> TreatmentOut:  # fmt: skip
    """A pair of panels on a rod with three brackets before one opening."""
    row = make_trade().headings[heading]
    left, right = opening.left_mm - reach, opening.right_mm + reach
    middle, stack = (left + right) / 2, 4.5 * IN
    top = height - row.drop_mm
    spans = {
        "open": ((left - 12, left - 12 + stack), (right + 12 - stack, right + 12)),
        "closed": ((left - 12, middle), (middle, right + 12)),
    }
    spans["half"] = ((left - 12, left - 12 + stack * 3), spans["open"][1])
    panels = tuple(
        make_panel(
            f"p{index + 1}", side, spans["open"][index], spans["closed"][index], spans[drawn][index], top, hem, folds,
            **facts,
        )
        for index, side in enumerate(("left", "right"))
    )  # fmt: skip
    support = make_support(left - 24, right + 24, height, ends)
    brackets = tuple(
        make_bracket(f"b{index + 1}", x, height, passes=index == 1) for index, x in enumerate((left, middle, right))
    )
    return TreatmentOut(
        ref=("w1", "s1", ident), name="", mount="wall", openings=(opening,),
        layers=(LayerOut(("w1", "s1", ident, "l1"), support, brackets, panels, heading, colour, body),),
        glass=GlassOut(1.0, 1.0, 0.0, 1.0, 0.0, 0.0, 0.0, 0.0),
        clearances=ClearancesOut(0.0, 0.0, None, 0.0, 0.0, None, None, None, None, None),
    )  # fmt: skip


def make_obstacle(kind: str, left: float, bottom: float, width: float, height: float, out: float = 30.0) -> ObstacleOut:
    return ObstacleOut(("w1", f"x-{kind}"), kind, "", left, left + width, bottom, bottom + height, out, None)


def make_wall(
    openings: tuple[OpeningOut, ...] = (), treatments: tuple[TreatmentOut, ...] = (),
    obstacles: tuple[ObstacleOut, ...] = (), **facts: object,
) -> SetOut:  # fmt: skip
    out = SetOut(
        wall="w1", wall_name="North", scheme="s1", scheme_name="Wide and high", width_mm=146 * IN, known_width=True,
        ends=("corner", "corner"), ceiling=Profile(((0.0, 98 * IN),)), floor=Profile(((0.0, 0.0),)), crown_mm=3.5 * IN,
        baseboard_mm=5.25 * IN, chain=ChainOut(()), openings=openings, obstacles=obstacles, treatments=treatments,
        proportions=(), missing=(),
    )  # fmt: skip
    return replace(out, **facts)  # type: ignore[arg-type]


def mirrored_opening(opening: OpeningOut, width: float) -> OpeningOut:
    return replace(
        opening, left_mm=width - opening.right_mm, right_mm=width - opening.left_mm,
        left_top_mm=opening.right_top_mm, right_top_mm=opening.left_top_mm,
        glass_left_mm=width - opening.glass_right_mm, glass_right_mm=width - opening.glass_left_mm,
        glass=tuple((width - x, y) for x, y in reversed(opening.glass)),
    )  # fmt: skip
