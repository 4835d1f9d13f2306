"""What the program remembers for a person between runs, in one plain file."""

from __future__ import annotations

from pathlib import Path

from platformdirs import PlatformDirs
from PySide6.QtCore import QByteArray, QSettings

from elevation.window.theme import MODES, SIZES, Mode

MOST_RECENT = 8
_STATE_VERSION = 1


class Settings:
    """Theme, recent rooms and the window's place.

    Parameters
    ----------
    path : Path or None
        The INI file; None: the person's own, asked for now so that ``XDG_CONFIG_HOME`` counts.
    """

    def __init__(self, path: Path | None = None) -> None:
        where = path or PlatformDirs("elevation", appauthor=False).user_config_path / "window.ini"
        # Writing fails quietly where the folder cannot be made: a missing setting is no trouble.
        self._store = QSettings(str(where), QSettings.Format.IniFormat)

    @property
    def mode(self) -> Mode:
        """Light, dark, or as the system is."""
        text = str(self._store.value("theme", "system"))
        return next((mode for mode in MODES if mode == text), "system")

    @mode.setter
    def mode(self, mode: Mode) -> None:
        self._store.setValue("theme", mode)

    @property
    def text_size(self) -> int:
        """Size of the window's text in per cent of the usual."""
        text = str(self._store.value("text", "100"))
        return next((size for size in SIZES if str(size) == text), 100)

    @text_size.setter
    def text_size(self, size: int) -> None:
        self._store.setValue("text", str(size))

    @property
    def unit(self) -> str:
        """The unit of the room begun last; empty before the first."""
        text = str(self._store.value("unit", ""))
        return text if text in ("in", "mm") else ""

    @unit.setter
    def unit(self, unit: str) -> None:
        self._store.setValue("unit", unit)

    @property
    def recent(self) -> list[Path]:
        """Rooms opened or saved last, the newest first; only those that are still there."""
        value = self._store.value("recent", [])
        texts = [value] if isinstance(value, str) else (value if isinstance(value, list) else [])
        return [path for path in (Path(str(text)) for text in texts if text) if path.is_file()]

    def remember(self, path: Path) -> None:
        """Put a room at the head of the recent ones."""
        own = path.resolve()
        others = [old for old in self.recent if old != own]
        self._store.setValue("recent", [str(one) for one in [own, *others][:MOST_RECENT]])

    @property
    def figures(self) -> tuple[str, ...]:
        """Names of the figures that pictures to post carried last; empty if none were ever chosen."""
        value = self._store.value("figures", [])
        return tuple(str(one) for one in (value if isinstance(value, list) else [value]))

    @figures.setter
    def figures(self, names: tuple[str, ...]) -> None:
        self._store.setValue("figures", list(names))

    @property
    def is_first(self) -> bool:
        """Whether no window was ever closed here before."""
        return self._store.value("version") is None

    def geometry(self) -> QByteArray | None:
        """The window's place, as Qt wrote it."""
        if str(self._store.value("version", "")) != str(_STATE_VERSION):
            return None
        value = self._store.value("geometry")
        return value if isinstance(value, QByteArray) else None

    def sizes(self, name: str) -> list[int]:
        """Sizes of a splitter; empty if none were kept."""
        value = self._store.value(f"sizes/{name}", [])
        texts = value if isinstance(value, list) else [value]
        return [int(str(text)) for text in texts if str(text).isdigit()]

    def is_open(self, drawer: str, usual: bool) -> bool:
        """Whether a drawer was left open."""
        return str(self._store.value(f"open/{drawer}", str(usual))).lower() == "true"

    def keep(self, geometry: QByteArray, sizes: dict[str, list[int]], drawers: dict[str, bool]) -> None:
        """Remember the window's place, its splitters and drawers."""
        self._store.setValue("version", _STATE_VERSION)
        self._store.setValue("geometry", geometry)
        for name, values in sizes.items():
            self._store.setValue(f"sizes/{name}", [str(value) for value in values])
        for name, is_open in drawers.items():
            self._store.setValue(f"open/{name}", str(is_open))

    def sync(self) -> None:
        """Write now."""
        self._store.sync()
