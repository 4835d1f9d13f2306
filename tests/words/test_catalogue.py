"""Every template in the code is a literal and has its translation, with the same places."""

from __future__ import annotations

import importlib.util
from gettext import GNUTranslations
from io import BytesIO
from pathlib import Path

import pytest

from elevation import places
from elevation.words import languages
from elevation.words.collect import Collected, Template, collect, places_in
from elevation.words.languages import catalogue_of

needs_babel = pytest.mark.skipif(importlib.util.find_spec("babel") is None, reason="Babel is a tool of development")
FOLDER = places.resources() / "words"


@pytest.fixture(scope="module")
def found() -> Collected:
    """The templates of the whole program, collected once."""
    from elevation.words.catalogue import collected

    return collected()


@needs_babel
@pytest.mark.parametrize("language", languages()[1:])
def test_every_template_is_translated_with_the_same_places(language: str, found: Collected) -> None:
    # Missing ones: write them into the .po file after `python -m elevation.words.catalogue`, then run that again.
    from elevation.words.catalogue import faults, read

    assert len(found.templates) > 100
    assert faults(read(FOLDER / f"{language}.po", language), found.templates) == []


@needs_babel
def test_all_catalogues_are_refreshed_or_checked_at_once(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], found: Collected
) -> None:
    from elevation.words import catalogue

    (tmp_path / "words").mkdir()
    source = tmp_path / "words" / "de.po"
    source.write_bytes((FOLDER / "de.po").read_bytes())
    monkeypatch.setattr(catalogue, "collected", lambda: found)
    monkeypatch.setattr(catalogue.places, "resources", lambda: tmp_path)
    assert catalogue.main(["--check"]) == 0
    assert not source.with_suffix(".mo").exists()
    assert catalogue.main([]) == 0
    assert source.with_suffix(".mo").read_bytes() == (FOLDER / "de.mo").read_bytes()
    assert source.read_bytes() == (FOLDER / "de.po").read_bytes()
    # Another language begins with nothing: each template is open, and that is said.
    assert len(catalogue.read(tmp_path / "fr.po", "fr")) == 0
    (tmp_path / "words" / "fr.po").write_bytes(catalogue.written(catalogue.read(tmp_path / "fr.po", "fr")))
    assert catalogue.main(["--check"]) == 1
    assert capsys.readouterr().out.startswith("fr: ")


def test_a_language_without_a_catalogue_says_the_templates() -> None:
    assert catalogue_of("xx").gettext("closed") == "closed"


def test_every_template_is_a_literal(found: Collected) -> None:
    assert found.not_literal == ()


@needs_babel
@pytest.mark.parametrize("language", languages()[1:])
def test_the_committed_catalogue_is_the_compiled_source(language: str) -> None:
    from elevation.words.catalogue import compiled, read

    # What is said, not byte for byte: another Babel writes another header.
    fresh = GNUTranslations(BytesIO(compiled(read(FOLDER / f"{language}.po", language))))
    with (FOLDER / f"{language}.mo").open("rb") as file:
        committed = GNUTranslations(file)
    ours, theirs = vars(fresh)["_catalog"], vars(committed)["_catalog"]
    assert {key: text for key, text in ours.items() if key} == {key: text for key, text in theirs.items() if key}


SOURCE = """
TEMPLATE = "held {by}"
def f(n, style):
    a = msg("one " "text", x=1)
    b = words.msg("left") if n else msg("right")
    c = msg("up" if n else "down")
    d = msg_plural("{count} ring", "{count} rings", count=n)
    e = msg(TEMPLATE, by=a)
    g = msg(n)
    h = msg(f"bad {n}")
    i = say(a, style)
    j = msg("{figure}: {reason}", figure=1, reason=a)
"""


@pytest.fixture
def sample(tmp_path: Path) -> Path:
    package = tmp_path / "house"
    package.mkdir()
    (package / "room.py").write_text(SOURCE, "utf-8")
    tables = tmp_path / "tables"
    tables.mkdir()
    (tables / "rings.csv").write_text(
        "\ufeff# a comment, with a comma\nid,name,size\nclip,clip ring,1 in\nbare,95 in,95 in\n", "utf-8"
    )
    return tmp_path


def test_collecting(sample: Path) -> None:
    found = collect(sample / "house", sample / "tables")
    assert [template.one for template in found.templates] == [
        "clip ring", "down", "held {by}", "left", "one text", "right", "up", "{count} ring",
    ]  # fmt: skip
    assert found.templates[-1] == Template("{count} ring", "{count} rings", ("house/room.py",))
    assert found.not_literal == ("house/room.py:9", "house/room.py:10")


def test_places() -> None:
    assert places_in("{a} and {b}, {{not}} {a}") == {"a", "b"}
    with pytest.raises(ValueError, match="expected"):
        places_in("{a")


@needs_babel
def test_refreshing_keeps_what_is_known_and_drops_what_is_gone(sample: Path) -> None:
    from babel.messages import Catalog

    from elevation.words.catalogue import compiled, faults, read, refreshed, written

    old = Catalog(locale="de")
    old.add("left", "links")
    old.add("gone", "weg")
    old.add("d&own", "&hinab")
    old.add("held {by}", "gehalten")
    templates = collect(sample / "house", sample / "tables").templates
    new = refreshed(old, templates, "de")
    assert new.get("left").string == "links"
    assert new.get("gone") is None
    assert new.get("down").string == "&hinab"
    found = faults(new, templates)
    assert sum(fault.startswith("not translated") for fault in found) == 5
    assert "other places than its template: 'gehalten' for 'held {by}'" in found

    new.get("{count} ring").string = ("ein Ring", "{count} Ringe")
    assert not any("ring'" in fault for fault in faults(new, templates) if "count" in fault)
    path = sample / "de.po"
    path.write_bytes(written(new))
    again = read(path, "de")
    assert written(refreshed(again, templates, "de")) == path.read_bytes()
    words = GNUTranslations(BytesIO(compiled(again)))
    assert words.ngettext("{count} ring", "{count} rings", 1) == "ein Ring"
    assert words.ngettext("{count} ring", "{count} rings", 5) == "{count} Ringe"
