"""Names that try to break PDF and PNG."""

import io

import pypdf
import pytest
from PIL import Image

from elevation.commands.draw import picture_of
from elevation.output.painters.pdf import to_pdf
from elevation.output.painters.png import to_png
from elevation.room.file import load_room
from elevation.trade.tables import load_trade
from tests.cross.hostile import DRAWN, MARKUP, write_hostile


@pytest.mark.parametrize("name", DRAWN, ids=["markup", "bidi", "emoji", "long"])
def test_hostile_names_are_drawn_and_run_nothing(name, tmp_path, qapp):
    room = load_room(write_hostile(tmp_path, name))
    picture = picture_of(room, room.walls[0], room.walls[0].schemes[0], load_trade())
    reader = pypdf.PdfReader(io.BytesIO(to_pdf([picture])), strict=True)
    assert len(reader.pages) == 1
    root = reader.trailer["/Root"]
    assert not {"/OpenAction", "/AA", "/AcroForm"} & set(root)
    assert list(reader.pages[0].annotations or []) == []
    assert reader.metadata is not None
    assert name in (reader.metadata.title or "")
    image = Image.open(io.BytesIO(to_png(picture, 50)))
    image.load()
    assert name in image.info["Title"]


def test_markup_in_a_name_can_be_selected_as_text_in_the_pdf(tmp_path, qapp):
    room = load_room(write_hostile(tmp_path, MARKUP[:24]))
    picture = picture_of(room, room.walls[0], room.walls[0].schemes[0], load_trade())
    text = pypdf.PdfReader(io.BytesIO(to_pdf([picture]))).pages[0].extract_text()
    assert MARKUP[:24].replace(" ", "") in text.replace(" ", "").replace("\n", "")
