"""The inks of the drawing: what each role of colour looks like on the warm sheet.

Few inks: a warm paper, one dark blue-grey line, one accent kept for what asks attention, one
second mark for what is held. Everything else is a tint of these. Text and marks keep the contrast
that WCAG 2.2 level AA asks for (4.5 to 1 for text, 3 to 1 for marks) on paper and on the wall's face.
"""

from __future__ import annotations

from functools import lru_cache

from elevation.sheet.records import Ink

_ROLES: dict[str, str] = {
    Ink.PAPER: "#f8f4ec",
    Ink.WALL: "#f0e8da",
    Ink.FLOOR: "#dccfba",
    Ink.TRIM: "#fdfbf6",
    Ink.GLASS: "#dbe7ec",
    Ink.OUTLINE: "#22303d",
    Ink.THIN: "#445361",
    Ink.TEXT: "#1d2935",
    Ink.QUIET: "#54606b",
    Ink.METAL: "#39434d",
    Ink.ACCENT: "#ab3218",
    Ink.HELD: "#17656e",
    Ink.GHOST: "#6a7680",
}

# Tints that only the drawing of things needs.
WALL_LOW = "#e8ddcb"
SKY_HIGH = "#c6d9e4"
SKY_MIDDLE = "#dde9ee"
SKY_LOW = "#eef0e8"
SHEEN_HIGH = "#d9e6ed"
SHEEN_LOW = "#f5f7f2"
FRAME = "#f6f2e9"
TRIM_SHADE = "#e9e3d7"
TRIM_DEEP = "#d9d2c4"
# Shadows are clear but even: a PDF painter makes a gradient from dark to clear solid.
SHADE = "#2e26201a"
SHADE_SOFT = "#2e26200f"
SHADE_FAINT = "#2e262006"
WALL_UNDER_CROWN = "#dfd7c9"
METAL_LIGHT = "#aab3ba"
METAL_MIDDLE = "#66717b"
METAL_DARK = "#2b343d"
# What rods are made of: full light, body, shade, and the line at the edge.
ROD_TONES = {
    "steel": (METAL_LIGHT, METAL_MIDDLE, METAL_DARK, METAL_DARK),
    "aluminium": ("#dfe4e7", "#a3adb4", "#66717b", "#48525b"),
    "copper": ("#eab591", "#bd7548", "#7d4526", "#5c3019"),
    "wood": ("#e6cda6", "#c59d6a", "#8f6c42", "#5f4526"),
}
PLASTIC = "#fbf9f4"
WOOD = "#d9c3a2"
WOOD_DARK = "#c2a880"
ENAMEL = "#f6f3ec"
ENAMEL_SHADE = "#d6d3ca"
EMBER = "#5a4a42"
FLAME = "#d98a4a"
LEAF = "#f4efe4"
# Fine lines on pale things: solid, since screens paint clear lines ten times as slowly.
FINE_LINE = "#8a9197"
HATCH = "#b9b6ae"
# What a section cuts through: the wall's body, and the plaster or board on its face.
SECTION_BODY = "#e6decf"
SECTION_FACE = "#d5ccbb"


def colour(ink: str) -> str:
    """The colour of a role, or the colour itself.

    Parameters
    ----------
    ink : str
        A role (``Ink``) or ``#rrggbb`` or ``#rrggbbaa``.

    Returns
    -------
    str
        ``#rrggbb`` or ``#rrggbbaa``.

    Raises
    ------
    KeyError
        For a text that is neither.
    """
    return ink if ink.startswith("#") else _ROLES[ink]


@lru_cache(maxsize=512)
def parts(ink: str) -> tuple[int, int, int, int]:
    """Red, green, blue and alpha of an ink, each 0 to 255."""
    text = colour(ink)
    alpha = int(text[7:9], 16) if len(text) == 9 else 255
    return int(text[1:3], 16), int(text[3:5], 16), int(text[5:7], 16), alpha


@lru_cache(maxsize=2048)
def blend(ink: str, other: str, share: float) -> str:
    """``ink`` with a ``share`` (0 to 1) of ``other`` mixed in; the alpha of ``ink`` is kept."""
    red, green, blue, alpha = parts(ink)
    mixed = [round(own + (far - own) * share) for own, far in zip((red, green, blue), parts(other)[:3], strict=True)]
    tail = "" if alpha == 255 else f"{alpha:02x}"
    return "#{:02x}{:02x}{:02x}".format(*mixed) + tail


@lru_cache(maxsize=2048)
def with_alpha(ink: str, alpha: float) -> str:
    """``ink`` at ``alpha`` (0 clear to 1 solid)."""
    red, green, blue, _ = parts(ink)
    return f"#{red:02x}{green:02x}{blue:02x}{round(alpha * 255):02x}"


def lightness(ink: str) -> float:
    """Relative luminance, 0 black to 1 white, alpha ignored (WCAG 2.2, definition of relative luminance)."""
    linear = [
        part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4
        for part in (value / 255 for value in parts(ink)[:3])
    ]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def contrast(ink: str, ground: str) -> float:
    """Contrast ratio of two solid colours, 1 to 21 (WCAG 2.2, definition of contrast ratio)."""
    high, low = sorted((lightness(ink), lightness(ground)), reverse=True)
    return (high + 0.05) / (low + 0.05)
