"""The program in a person's menu: files of the freedesktop specifications, put and taken away."""

from __future__ import annotations

import configparser
import os
import shlex
import subprocess
import sys
import xml.etree.ElementTree as ET
from pathlib import Path
from shutil import which

import pytest

from elevation import __version__, places
from elevation.commands.desktop import exec_line, quoted
from elevation.commands.main import main

DESKTOP = places.resources() / "desktop"
MIME = "{http://www.freedesktop.org/standards/shared-mime-info}"


@pytest.fixture
def home(tmp_path, monkeypatch):
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "data"))
    return tmp_path / "data"


def entry(home: Path) -> configparser.SectionProxy:
    # Desktop entry specification: keys keep their case, and a percent sign means something else than here.
    parser = configparser.ConfigParser(interpolation=None)
    parser.optionxform = str  # type: ignore[assignment,method-assign]
    parser.read(home / "applications" / "elevation.desktop", encoding="utf-8")
    return parser["Desktop Entry"]


def files(home: Path) -> set[str]:
    return {str(path.relative_to(home)) for path in home.rglob("*elevation*") if path.is_file()} | {
        str(path.relative_to(home)) for path in home.rglob("*.metainfo.xml")
    }


def test_put_and_remove(home, capsys):
    assert main(["desktop", "put"]) == 0
    assert "in your menu" in capsys.readouterr().out
    assert files(home) >= {
        "applications/elevation.desktop",
        "mime/packages/elevation.xml",
        "metainfo/local.elevation.Elevation.metainfo.xml",
        "icons/hicolor/scalable/apps/elevation.svg",
        "icons/hicolor/scalable/mimetypes/elevation-room.svg",
    }
    ours = home / "applications" / "of-somebody-else.desktop"
    ours.write_text("[Desktop Entry]\n")
    assert main(["desktop", "put"]) == 0
    assert main(["desktop", "remove"]) == 0
    assert "5 files" in capsys.readouterr().out
    assert ours.exists()
    assert not (home / "applications" / "elevation.desktop").exists()
    assert main(["desktop", "remove"]) == 0
    assert "was not" in capsys.readouterr().out


def test_the_entry_starts_this_installation(home):
    assert main(["desktop", "put"]) == 0
    line = entry(home)["Exec"]
    assert line.endswith(" %f")
    assert line.startswith('"')
    # Nothing on this path is escaped, so that a shell's reader parts it as the specification does.
    command = [*shlex.split(line.removesuffix(" %f")), "--version"]
    told = subprocess.run(command, capture_output=True, text=True, check=True, timeout=60)
    assert __version__ in told.stdout


@pytest.mark.parametrize(
    ("word", "wanted"),
    [
        # Desktop entry specification, "The Exec key": quote, escape, and the string's own escape over it.
        ("/usr/bin/elevation", '"/usr/bin/elevation"'),
        ("/a b/e", '"/a b/e"'),
        ("/a$b", r'"/a\\$b"'),
        ('/a"b', r'"/a\\"b"'),
        ("/a\\b", r'"/a\\\\b"'),
        ("/100%/e", '"/100%%/e"'),
    ],
)
def test_words_are_quoted_as_the_specification_asks(word, wanted):
    assert quoted(word) == wanted


def test_without_a_script_the_interpreter_runs_the_package(tmp_path):
    python = tmp_path / "python3"
    assert exec_line(str(python)) == f'"{python}" -m elevation'
    (tmp_path / "elevation").write_text("")
    assert exec_line(str(python)) == f'"{tmp_path / "elevation"}"'


def test_what_the_files_say_of_each_other(home):
    assert main(["desktop", "put"]) == 0
    kind = ET.parse(DESKTOP / "elevation.mime.xml").getroot().find(f"{MIME}mime-type")
    assert kind is not None
    assert entry(home)["MimeType"] == f"{kind.get('type')};"
    assert [glob.get("pattern") for glob in kind.iter(f"{MIME}glob")] == ["*.room.json"]
    about = ET.parse(DESKTOP / "elevation.metainfo.xml").getroot()
    assert about.findtext("launchable") == "elevation.desktop"
    assert about.findtext("provides/mediatype") == kind.get("type")
    assert next(release.get("version") for release in about.iter("release")) == __version__
    for name in (entry(home)["Icon"], "elevation-room"):
        ET.parse(next(home.rglob(f"{name}.svg")))


def test_a_folder_that_cannot_be_written_is_told(tmp_path, monkeypatch, capsys):
    (tmp_path / "data").write_text("no folder")
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "data"))
    assert main(["desktop", "put"]) == 2
    assert "elevation.desktop" in capsys.readouterr().err


def test_elsewhere_it_says_so(monkeypatch, capsys):
    monkeypatch.setattr(sys, "platform", "darwin")
    assert main(["desktop", "put"]) == 2
    assert "menus" in capsys.readouterr().err


@pytest.mark.parametrize("words", [["desktop"], ["desktop", "hide"], ["desktop", "put", "twice"]])
def test_bad_use(words, capsys):
    assert main(words) == 2
    assert "Traceback" not in capsys.readouterr().err


@pytest.mark.skipif(which("desktop-file-validate") is None, reason="desktop-file-utils is not installed")
def test_the_entry_is_valid(home):
    assert main(["desktop", "put"]) == 0
    told = subprocess.run(
        ["desktop-file-validate", home / "applications" / "elevation.desktop"], capture_output=True, text=True, check=False
    )
    assert (told.returncode, told.stdout) == (0, "")


@pytest.mark.skipif(which("appstreamcli") is None, reason="appstream is not installed")
def test_the_metadata_is_valid():
    told = subprocess.run(
        ["appstreamcli", "validate", "--no-net", DESKTOP / "elevation.metainfo.xml"],
        capture_output=True,
        text=True,
        check=False,
        env={**os.environ, "LC_ALL": "C.UTF-8"},
    )
    assert told.returncode == 0, told.stdout


@pytest.mark.skipif(which("update-mime-database") is None, reason="shared-mime-info is not installed")
def test_the_media_type_is_known_to_the_desktop(home):
    assert main(["desktop", "put"]) == 0
    assert "60:application/x-elevation-room+json:*.room.json" in (home / "mime" / "globs2").read_text()
