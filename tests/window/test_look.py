"""Light and dark, contrast, icons, names for screen readers, and what the window remembers."""

from __future__ import annotations

import pytest
from PySide6.QtGui import QAction, QPalette
from PySide6.QtWidgets import QAbstractButton, QAbstractItemView, QApplication, QComboBox, QLineEdit

from elevation import places
from elevation.sheet.inks import contrast
from elevation.window.actions import COMMANDS
from elevation.window.icons import picture
from elevation.window.length_field import FieldRow
from elevation.window.settings import Settings
from elevation.window.theme import CONTRAST_DARK, CONTRAST_LIGHT, DARK, LIGHT, MODES, POINTS, SIZES, palette_of, theme_for


@pytest.mark.parametrize("theme", [LIGHT, DARK], ids=["light", "dark"])
def test_text_and_marks_keep_the_contrast_of_wcag(theme):
    # WCAG 2.2 level AA: 4.5 to 1 for text (1.4.3), 3 to 1 for marks of controls (1.4.11).
    for ground in (theme.panel, theme.field):
        for ink in (theme.ink, theme.quiet, theme.accent, theme.held):
            assert contrast(ink, ground) >= 4.5
    assert contrast(theme.on_held, theme.held) >= 4.5


@pytest.mark.parametrize("theme", [CONTRAST_LIGHT, CONTRAST_DARK], ids=["black on white", "white on black"])
def test_high_contrast_keeps_the_stricter_contrast_of_wcag(theme):
    # WCAG 2.2 level AAA: 7 to 1 for text (1.4.6); hairlines are marks of controls too (1.4.11).
    for ground in (theme.panel, theme.field):
        for ink in (theme.ink, theme.quiet, theme.accent, theme.held):
            assert contrast(ink, ground) >= 7
        assert contrast(theme.line, ground) >= 3
    assert contrast(theme.on_held, theme.held) >= 7
    palette = palette_of(theme)
    raised = palette.color(QPalette.ColorRole.Button).name()
    assert contrast(theme.ink, raised) >= 4.5
    # A button that is down stands out from the bar.
    assert contrast(raised, theme.panel) >= 1.5


_PAIRS = (
    ("WindowText", "Window"), ("Text", "Base"), ("Text", "AlternateBase"), ("ButtonText", "Button"),
    ("ToolTipText", "ToolTipBase"), ("PlaceholderText", "Base"), ("PlaceholderText", "Window"), ("BrightText", "Base"),
    ("BrightText", "Window"), ("Link", "Base"), ("Link", "Window"), ("HighlightedText", "Highlight"),
)  # fmt: skip
"""Which of the palette's inks stand on which of its grounds."""


@pytest.mark.parametrize("pair", _PAIRS, ids=" on ".join)
@pytest.mark.parametrize("theme", [LIGHT, DARK, CONTRAST_LIGHT, CONTRAST_DARK], ids=["light", "dark", "black", "white"])
def test_every_ink_of_the_palette_reads_on_its_ground(theme, pair):
    palette = palette_of(theme)
    ink, ground = (palette.color(getattr(QPalette.ColorRole, name)).name() for name in pair)
    # WCAG 2.2, 1.4.3: 4.5 to 1. What cannot be chosen just now is exempt there.
    assert contrast(ink, ground) >= 4.5


def test_a_check_box_is_seen_in_high_contrast(window):
    window.show()
    flag = window.measurements.thrice
    for mode, ink in (("contrast-dark", 255), ("contrast-light", 0)):
        window.actions_by_name[f"theme-{mode}"].trigger()
        QApplication.processEvents()
        image = flag.grab().toImage()
        middle = flag.height() // 2
        row = [image.pixelColor(x, middle).lightness() for x in range(20)]
        assert ink in row, (mode, row)


def test_the_text_can_be_larger_and_fields_grow_with_it(make_window, demo_room):
    window = make_window(demo_room("1-bedroom.room.json"))
    window.show()
    row = next(iter(window.measurements.findChildren(FieldRow)))
    usual = row.field.width()
    for size in reversed(SIZES):
        window.actions_by_name[f"text-{size}"].trigger()
        QApplication.processEvents()
        assert window.settings.text_size == size
        assert row.font().pointSizeF() == pytest.approx(POINTS * size / 100, abs=0.01)
        assert row.field.width() == pytest.approx(usual * size / 100, abs=1)


def test_every_mode_and_size_has_its_place_in_the_menu(window):
    names = {command.name for command in COMMANDS}
    assert {f"theme-{mode}" for mode in MODES} <= names
    assert {f"text-{size}" for size in SIZES} <= names


def test_a_size_nobody_offers_is_the_usual_one(tmp_path):
    path = tmp_path / "window.ini"
    path.write_text("[General]\ntext=900\ntheme=pink\n")
    assert (Settings(path).text_size, Settings(path).mode) == (100, "system")


def test_dark_darkens_the_desk_and_leaves_the_paper(window):
    canvas = window.canvas
    spot = canvas.viewport.to_px((200, 1500))
    light = canvas.grab().toImage()
    window.actions_by_name["theme-dark"].trigger()
    assert QApplication.palette().color(QPalette.ColorRole.Window).lightness() < 80
    dark = canvas.grab().toImage()
    corner = (2, 2)
    assert dark.pixelColor(*corner).lightness() < 60 < light.pixelColor(*corner).lightness()
    at = (round(spot[0]), round(spot[1]))
    assert dark.pixelColor(*at) == light.pixelColor(*at)
    assert window.settings.mode == "dark"
    window.actions_by_name["theme-light"].trigger()
    assert QApplication.palette().color(QPalette.ColorRole.Window).lightness() > 180


def test_a_desktop_that_does_not_tell_is_light(qapp):
    assert theme_for("system") in (LIGHT, DARK)
    assert theme_for("dark") is DARK


def test_palettes_say_placeholder_and_disabled_too():
    palette = palette_of(DARK)
    disabled = palette.color(QPalette.ColorGroup.Disabled, QPalette.ColorRole.Text)
    assert disabled != palette.color(QPalette.ColorGroup.Active, QPalette.ColorRole.Text)


@pytest.mark.parametrize("path", sorted((places.resources() / "icons").glob("*.svg")), ids=lambda path: path.stem)
def test_every_icon_draws_in_the_ink_asked_for(qapp, path):
    image = picture(path.stem, "#ff0000", 20, 2.0).toImage()
    colours = {
        image.pixelColor(x, y).getRgb() for x in range(40) for y in range(40) if image.pixelColor(x, y).alpha() > 200
    }
    assert colours
    assert all(red > 200 and green < 60 and blue < 60 for red, green, blue, _ in colours)


def test_commands_have_icons_that_exist_and_keys_of_their_own():
    names = {path.stem for path in (places.resources() / "icons").glob("*.svg")}
    assert {command.icon for command in COMMANDS if command.icon} <= names
    keys = [key for command in COMMANDS for key in command.keys]
    assert len(keys) == len(set(keys))


def test_every_control_has_a_name_for_screen_readers(window):
    for drawer in window.drawers:
        drawer.set_open(True)
        window.refresh()
    controls = [
        *window.findChildren(QLineEdit), *window.findChildren(QComboBox), *window.findChildren(QAbstractButton),
        *window.findChildren(QAbstractItemView),
    ]  # fmt: skip
    ours = [one for one in controls if one.window() is window and not one.objectName().startswith("qt_")]
    nameless = [
        one for one in ours
        if not one.accessibleName() and not (isinstance(one, QAbstractButton) and (one.text() or one.toolTip()))
        and not isinstance(one.parent(), QComboBox | QAbstractItemView)
    ]  # fmt: skip
    assert nameless == []
    assert len(ours) > 40


def test_menus_have_mnemonics_that_do_not_clash(window):
    def letters(actions: list[QAction]) -> list[str]:
        return [action.text()[action.text().index("&") + 1].lower() for action in actions if "&" in action.text()]

    bars = window.menuBar().actions()
    assert all("&" in action.text() for action in bars)
    assert len(set(letters(bars))) == len(bars)
    for bar in bars:
        found = letters(bar.menu().actions())
        assert len(found) == len(set(found)), bar.text()


def test_nothing_overlaps_at_1366_by_768(window):
    window.resize(1366, 768)
    QApplication.processEvents()
    left, canvas, right = (
        part.rect().translated(part.mapTo(window, part.rect().topLeft()))
        for part in (window.left, window.canvas, window.right)
    )
    assert left.right() < canvas.left()
    assert canvas.right() < right.left()
    assert canvas.width() >= 780
    assert window.width() == 1366
    assert window.height() == 768
    for drawer in window.drawers:
        drawer.set_open(True)
        QApplication.processEvents()
        # No form is cut off at the side, and every heading is in sight.
        assert drawer.content.width() <= drawer.area.width()
        assert all(other.head.mapTo(window, other.head.rect().bottomLeft()).y() < 768 for other in window.drawers)


def test_sides_fold_away(window):
    width = window.canvas.width()
    window.actions_by_name["left-side"].trigger()
    QApplication.processEvents()
    assert not window.left.isVisible()
    assert window.canvas.width() > width
    window.actions_by_name["left-side"].trigger()
    assert window.left.isVisible()


def test_switches_change_what_is_drawn(window):
    canvas = window.canvas
    seen = []
    for name in ("cloth-closed", "cloth-drawn", "cloth-open"):
        window.actions_by_name[name].trigger()
        seen.append({group.layer for group in canvas.picture.groups(canvas.viewport, canvas.shown)})
    assert "panel-closed" in seen[0]
    assert "panel-open" not in seen[0]
    assert "panel-open" in seen[2]
    window.actions_by_name["dimensions"].trigger()
    layers = {group.layer for group in canvas.picture.groups(canvas.viewport, canvas.shown)}
    assert not layers & {"dimension", "held"}
    window.actions_by_name["stack"].trigger()
    layers = {group.layer for group in canvas.picture.groups(canvas.viewport, canvas.shown)}
    assert "stack" in layers


def test_the_window_remembers(make_window, tmp_path):
    window = make_window()
    window.drawers[4].set_open(False)
    window.close()
    again = make_window()
    assert not again.drawers[4].is_open
    assert again.drawers[0].is_open


def test_settings_survive_nonsense(tmp_path):
    path = tmp_path / "window.ini"
    path.write_text("[General]\ntheme=purple\nrecent=/nowhere/at/all.room.json\nversion=9\n", encoding="utf-8")
    settings = Settings(path)
    assert settings.mode == "system"
    assert settings.recent == []
    assert settings.geometry() is None
    assert settings.sizes("main") == []


def test_recent_rooms_are_few_and_real(tmp_path):
    settings = Settings(tmp_path / "window.ini")
    for number in range(12):
        path = tmp_path / f"{number}.room.json"
        path.write_text("{}", encoding="utf-8")
        settings.remember(path)
    (tmp_path / "11.room.json").unlink()
    assert [path.name for path in settings.recent][:2] == ["10.room.json", "9.room.json"]
    assert len(settings.recent) == 7
