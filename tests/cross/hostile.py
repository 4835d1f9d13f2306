"""A room whose every name tries to break out of the output it is written into."""

from __future__ import annotations

import json
from pathlib import Path

from elevation import places

# Markup, quotes, entities, a comment's and a CDATA section's end, SVG that would load and run things.
MARKUP = "</text></svg><script>alert('x')</script>\"'&amp;&lt;&#0;]]>--><image href=\"file:///etc/passwd\"/>{name}%s"
# Escape sequences: red text, a window title, clear the screen; the one-character CSI; bell, backspace, delete.
TERMINAL = "\x1b[31mred\x1b]0;title\x07\x1b[2J\x9b1mC1\x08\x08\x7f\x00end"
# Line ends that would make a second line of a sentence; BOM, object replacement, noncharacters, a lone surrogate.
LINES = "one\ntwo\rthree\x0bfour\x0cfive\x85six\u2028seven\u2029eight\ufeff\ufffc\ufffe\uffff"
# Right-to-left letters and the marks that turn the direction of what follows.
BIDI = "\u202eevitcelloc\u2066\u05e9\u05dc\u05d5\u05dd\u2069\u200f \u0645\u0631\u062d\u0628\u0627 abc"
EMOJI = "\U0001f3e0 \U0001f468\u200d\U0001f469\u200d\U0001f467 e\u0301\u0301\u0301\u0301 \u7a93\u30ab\u30fc\u30c6\u30f3"
LONG = "Ww" * 100
"""As long as a name may be."""

DRAWN = (MARKUP, BIDI, EMOJI, LONG)
REFUSED = (TERMINAL, LINES, "W" * 300)
NAMES = DRAWN + REFUSED


def hostile_room(name: str) -> bytes:
    """The bedroom with ``name`` for the name of everything that can have one."""
    room = json.loads((places.demo_rooms() / "1-bedroom.room.json").read_text(encoding="utf-8"))
    room["name"] = name
    wall = room["walls"][0]
    wall["name"] = name
    for kind in ("obstacles", "schemes"):
        for thing in wall[kind]:
            thing["name"] = name
    for scheme in wall["schemes"]:
        for treatment in scheme["treatments"]:
            treatment["name"] = name
    # A heater close to the cloth makes findings that speak of things by name.
    wall["obstacles"][0] |= {"left": "60 in"}
    return json.dumps(room).encode("utf-8", errors="surrogatepass")


def write_hostile(folder: Path, name: str) -> Path:
    path = folder / "hostile.room.json"
    path.write_bytes(hostile_room(name))
    return path
