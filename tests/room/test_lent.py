"""A room carries the rows of somebody's own tables that it names, and opens wherever it is sent."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from elevation.commands.main import main
from elevation.errors import BadInput
from elevation.planning.house import look
from elevation.room.edits import edit_at, replace_at, replace_rod
from elevation.room.file import dump_room, load_bytes, load_room
from elevation.room.lent import MOST_ROWS, packed, trade_of
from elevation.room.model import Room
from elevation.room.validate import check_room, check_rows
from elevation.session.session import Session
from elevation.setting_out.whole import set_out_afresh
from elevation.trade.csv_lines import MOST_CELL
from elevation.trade.model import Trade
from elevation.trade.own import TABLES, table_named
from elevation.trade.tables import load_trade
from elevation.trade.writing import cells_of, row_of_cells
from elevation.words import msg
from tests.findings.rooms import LAYER, LEFT_BRACKET, good_room

SHIPPED = load_trade()
TUBE = replace(SHIPPED.sections["conduit-3/4"], id="my-tube", name="my tube", outer_mm=21.3, material="my-alloy")
ALLOY = replace(SHIPPED.materials["steel"], id="my-alloy", name="my alloy", elastic=69000.0)
ARM = replace(SHIPPED.brackets["shop-strap"], id="my-arm", name="my arm", plate_width_mm=60.0)


def hers() -> Trade:
    return replace(
        SHIPPED,
        sections={**SHIPPED.sections, "my-tube": TUBE, "my-unused": replace(TUBE, id="my-unused")},
        materials={**SHIPPED.materials, "my-alloy": ALLOY},
        brackets={**SHIPPED.brackets, "my-arm": ARM},
    )


def named() -> Room:
    return replace_at(replace_rod(good_room(), LAYER, section="my-tube"), LEFT_BRACKET, kit="my-arm")


@pytest.mark.parametrize("table", TABLES, ids=lambda table: table.name)
def test_every_row_written_as_cells_is_the_same_row_again(table) -> None:
    for key, row in getattr(SHIPPED, table.name).items():
        assert row_of_cells(table, key, cells_of(table, row)) == row


@given(st.floats(0, 99999, allow_nan=False))
def test_every_length_survives_to_a_millionth_of_a_millimetre(value: float) -> None:
    table = table_named("sections")
    row = replace(TUBE, wall_mm=value)
    assert row_of_cells(table, "my-tube", cells_of(table, row)).wall_mm == pytest.approx(value, abs=6e-7)


@given(st.floats(1e-9, 1e9, allow_nan=False))
def test_every_ratio_survives_whole(value: float) -> None:
    table = table_named("bodies")
    row = replace(SHIPPED.bodies["light"], id="my-felt", grams=value)
    assert row_of_cells(table, "my-felt", cells_of(table, row)).grams == value


def test_what_is_named_is_carried_with_what_that_names_and_nothing_else() -> None:
    room = packed(named(), hers())
    assert {name: set(rows) for name, rows in room.rows.items()} == {
        "brackets": {"my-arm"}, "materials": {"my-alloy"}, "sections": {"my-tube"},
    }  # fmt: skip
    assert packed(room, hers()) is room
    assert packed(good_room(), hers()) == good_room()
    # What it was sent with stays: opened and saved unchanged it is the very same file.
    sent = replace(good_room(), rows=room.rows)
    assert packed(sent, hers()) is sent
    assert packed(sent, SHIPPED) is sent


def test_it_opens_where_nobody_has_those_rows_and_lands_alike() -> None:
    sent = load_bytes(dump_room(packed(named(), hers())), "sent.room.json")
    whole = trade_of(sent, SHIPPED)
    check_rows(sent, whole, "sent")
    assert (whole.sections["my-tube"], whole.materials["my-alloy"], whole.brackets["my-arm"]) == (TUBE, ALLOY, ARM)
    here = load_bytes(dump_room(named()), "here.room.json")
    assert set_out_afresh(sent, "w1", "s1", whole).treatments == set_out_afresh(here, "w1", "s1", hers()).treatments
    # And it is passed on from there.
    assert packed(sent, whole) == sent


def test_her_own_row_wins_over_the_one_that_was_sent() -> None:
    sent = packed(named(), hers())
    corrected = replace(hers(), sections={**hers().sections, "my-tube": replace(TUBE, outer_mm=25.0)})
    assert trade_of(sent, corrected) is corrected
    assert packed(sent, corrected).rows["sections"]["my-tube"]["outer"] == "25.0 mm"


def test_a_room_without_such_rows_is_written_as_before() -> None:
    assert b'"rows"' not in dump_room(packed(good_room(), hers()))
    assert trade_of(good_room(), SHIPPED) is SHIPPED
    with pytest.raises(BadInput, match="somebody's own table"):
        check_rows(named(), trade_of(named(), SHIPPED), "room")


@pytest.mark.parametrize(
    ("rows", "words"),
    [
        ({"curtains": {}}, "rows.curtains: is no table"),
        ({"sections": {"conduit-1": {}}}, "such ids begin with my-"),
        ({"sections": {"my-tube": {"name": "a"}}}, "rows.sections.my-tube.material: is missing"),
        ({"sections": {"my-tube": {**cells_of(table_named("sections"), TUBE), "outer": "2"}}}, "has no unit"),
        ({"sections": {"my-tube": {**cells_of(table_named("sections"), TUBE), "id": "x"}}}, "is no column"),
        ({"sections": {"my-tube": {**cells_of(table_named("sections"), TUBE), "colour": "red"}}}, "is no column"),
        ({"sections": {"my-tube": {**cells_of(table_named("sections"), TUBE), "name": "a" * 301}}}, "more than 300"),
        (
            {"sections": {f"my-{n}": cells_of(table_named("sections"), TUBE) for n in range(MOST_ROWS + 1)}},
            "at most 200",
        ),
    ],
)
def test_rows_that_cannot_be_read_are_refused_with_their_place(rows, words: str) -> None:
    with pytest.raises(BadInput) as caught:
        check_room(replace(good_room(), rows=rows), "sent.room.json")
    assert words in str(caught.value)


def test_just_as_many_and_just_as_long_as_can_be() -> None:
    cells = {**cells_of(table_named("sections"), TUBE), "name": "a" * MOST_CELL}
    check_room(replace(good_room(), rows={"sections": {f"my-{n}": cells for n in range(MOST_ROWS)}}), "room")


def test_a_session_saves_them_and_another_opens_them(tmp_path: Path) -> None:
    path = tmp_path / "sent.room.json"
    first = Session(good_room(), hers())
    first.commit(named(), msg("Dress"), LAYER)
    first.save(path)
    assert not first.is_modified
    assert set(load_room(path).rows) == {"brackets", "materials", "sections"}
    first.close()
    second = Session(good_room(), SHIPPED)
    second.open(path)
    assert second.trade.sections["my-tube"] == TUBE
    assert second.set_out().treatments
    assert not second.is_modified
    before = path.read_bytes()
    second.save()
    assert path.read_bytes() == before
    # Back to a room of nobody's rows, and to her tables.
    second.begin(good_room())
    assert second.trade is SHIPPED
    second.close()


def test_the_command_line_and_the_house_read_them(tmp_path: Path, capsys, monkeypatch) -> None:
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "data"))
    path = tmp_path / "sent.room.json"
    path.write_bytes(dump_room(packed(named(), hers())))
    assert main(["check", str(path), "--json"]) in (0, 1)
    assert not json.loads(capsys.readouterr().out)["errors"]
    assert main(["draw", str(path), "--out", str(tmp_path / "sent.svg")]) == 0
    assert main(["draw", str(path), "--sheet", "buying", "--out", str(tmp_path / "buy.csv")]) == 0
    assert "my arm" in (tmp_path / "buy.csv").read_text(encoding="utf-8-sig")
    (wall,) = look(path, SHIPPED)
    assert wall.error is None
    assert wall.trade is not None
    assert "my-arm" in wall.trade.brackets


def test_edits_keep_what_was_sent() -> None:
    sent = packed(named(), hers())
    assert edit_at(sent, LAYER, lambda layer: replace(layer, heading="rings")).rows == sent.rows


def test_a_section_that_is_sent_is_of_a_material_that_is_known_or_sent_too() -> None:
    room = packed(named(), hers())
    check_rows(room, trade_of(room, SHIPPED), "x")
    alone = replace(room, rows={name: rows for name, rows in room.rows.items() if name != "materials"})
    with pytest.raises(BadInput, match=r"^x: rows\.sections\.my-tube\.material: is \"my-alloy\", a row of somebody's own"):
        check_rows(alone, trade_of(alone, SHIPPED), "x")
    odd = {**room.rows["sections"], "my-tube": {**room.rows["sections"]["my-tube"], "material": "steal"}}
    wrong = replace(room, rows={**room.rows, "sections": odd})
    with pytest.raises(BadInput, match='did you mean "steel"'):
        check_rows(wrong, trade_of(wrong, SHIPPED), "x")
