"""The translations kept in step with the templates: ``python -m elevation.words.catalogue [--check]``.

Refreshes every ``resources/words/<language>.po`` from the source and the tables (translations kept, vanished templates
dropped, new ones left open), compiles it to ``.mo``, and lists what is not translated. With ``--check`` nothing is
written. Exit 1 if anything is open. Babel, a tool of development, is needed only here.
"""

from __future__ import annotations

import sys
from datetime import UTC, datetime
from io import BytesIO
from pathlib import Path
from typing import TYPE_CHECKING

from elevation import places
from elevation.words.collect import Collected, Template, collect, places_in

if TYPE_CHECKING:
    from babel.messages import Catalog

# A catalogue's bytes say what was translated, not when.
_DATE = datetime(2000, 1, 1, tzinfo=UTC)
_HEADER = "# Words of the elevation program. Refresh: python -m elevation.words.catalogue"


def collected() -> Collected:
    """The templates of the whole program."""
    return collect(Path(__file__).resolve().parents[1], places.resources() / "tables")


def read(path: Path, language: str) -> Catalog:
    """The catalogue in a ``.po`` file; an empty one if there is no file."""
    from babel.messages import Catalog
    from babel.messages.pofile import read_po

    if not path.exists():
        return Catalog(locale=language)
    with path.open("rb") as file:
        return read_po(file, locale=language)


def refreshed(old: Catalog, templates: tuple[Template, ...], language: str) -> Catalog:
    """A catalogue of exactly ``templates``, with the translations of ``old`` where it has them."""
    from babel.messages import Catalog

    new = Catalog(
        locale=language,
        header_comment=_HEADER,
        project="elevation",
        version="1",
        last_translator="the makers of elevation",
        language_team="the makers of elevation",
        msgid_bugs_address="the project's issues",
        creation_date=_DATE,
        revision_date=_DATE,
        fuzzy=False,
    )
    # An underlined letter that moved in the template changes nothing in the translation.
    unmarked = {_bare(known.id): known.id for known in old if isinstance(known.id, str) and known.id}
    for template in templates:
        said = said_in(old, template)
        if said == ("",) and not template.other and _bare(template.one) in unmarked:
            said = said_in(old, Template(unmarked[_bare(template.one)], "", ()))
        places_of = [(name, 0) for name in template.files]
        if template.other:
            new.add((template.one, template.other), said if len(said) == 2 else ("", ""), locations=places_of)
        else:
            new.add(template.one, said[0], locations=places_of)
    return new


def _bare(template: str) -> str:
    return template.replace("&", "")


def said_in(catalogue: Catalog, template: Template) -> tuple[str, ...]:
    """A template's translation, or its forms by count; one empty text if there is none."""
    message = catalogue.get(template.one)
    if message is None or not message.string:
        return ("",)
    return (message.string,) if isinstance(message.string, str) else tuple(message.string)


def faults(catalogue: Catalog, templates: tuple[Template, ...]) -> list[str]:
    """What a catalogue lacks: open templates, and translations whose places differ from their template's."""
    found = []
    for template in templates:
        texts = said_in(catalogue, template)
        if not all(texts) or (template.other and len(texts) < 2):
            found.append(f"not translated: {template.one!r} ({', '.join(template.files)})")
            continue
        wanted = places_in(template.one) | places_in(template.other)
        # The singular may leave its count unsaid ("one ring").
        may_lack = {"count"} if template.other else set()
        found += [
            f"other places than its template: {text!r} for {template.one!r}"
            for text in texts
            if not wanted - may_lack <= places_in(text) <= wanted
        ]
    return found


def compiled(catalogue: Catalog) -> bytes:
    """A catalogue as the bytes of a ``.mo`` file."""
    from babel.messages.mofile import write_mo

    buffer = BytesIO()
    write_mo(buffer, catalogue)
    return buffer.getvalue()


def written(catalogue: Catalog) -> bytes:
    """A catalogue as the bytes of a ``.po`` file."""
    from babel.messages.pofile import write_po

    buffer = BytesIO()
    write_po(buffer, catalogue, width=120, include_lineno=False)
    return buffer.getvalue()


def main(arguments: list[str]) -> int:
    """Refresh or check all catalogues; the exit code is 1 if anything is open."""
    found = collected()
    lines = [f"not a literal template: {place}" for place in found.not_literal]
    folder = places.resources() / "words"
    for path in sorted(folder.glob("*.po")):
        language = path.stem
        catalogue = refreshed(read(path, language), found.templates, language)
        lines += [f"{language}: {fault}" for fault in faults(catalogue, found.templates)]
        if "--check" not in arguments:
            path.write_bytes(written(catalogue))
            path.with_suffix(".mo").write_bytes(compiled(catalogue))
    sys.stdout.write("".join(f"{line}\n" for line in lines))
    return 1 if lines else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
