"""The way in: reads the command line, runs one command, turns errors into one sentence.

Exit codes: 0 fine; 1 ``check`` found a stop or something broken; 2 bad use or bad input; 70 a bug.
Nothing here imports Qt: ``--help``, ``--version`` and ``check`` never do.
"""

from __future__ import annotations

import gc
import sys
from collections.abc import Sequence

from elevation.commands import arguments
from elevation.commands.speaking import say_sentence
from elevation.errors import ElevationError

EXIT_FINE = 0
EXIT_FOUND = 1
EXIT_BAD = 2
EXIT_BUG = 70


def main(argv: Sequence[str] | None = None) -> int:
    """Run the command line ``argv`` (default: the process's own) and return the exit code."""
    words = list(sys.argv[1:] if argv is None else argv)
    _speak_utf8()
    try:
        return _run(words)
    except ElevationError as error:
        complain(error)
        return EXIT_BAD
    except KeyboardInterrupt:
        return 130
    except BrokenPipeError:
        # The reader of our output went away (``| head``); that is no fault of anyone.
        sys.stderr.close()
        return EXIT_FINE
    except Exception:
        from elevation.commands.crash import write_report

        place = write_report()
        where = "no report could be written" if place is None else f"a report was written to {place}"
        say_sentence(f"something went wrong inside the program; {where}")
        return EXIT_BUG


def complain(error: ElevationError) -> None:
    """Say one error as one sentence on standard error."""
    say_sentence(str(error))


def _speak_utf8() -> None:
    # In a C locale Python may fall back to ASCII, and a fraction or an umlaut would end the program.
    for stream in (sys.stdout, sys.stderr):
        reconfigure = getattr(stream, "reconfigure", None)
        if reconfigure is not None:
            reconfigure(encoding="utf-8", errors="replace")


def _run(words: list[str]) -> int:
    given = arguments.read(words)
    if isinstance(given, arguments.Help):
        print(given.text, end="")
        return EXIT_FINE
    if isinstance(given, arguments.Window):
        from elevation.commands.open_window import run_window

        return run_window(given)
    # Off since the start; the window turns it on again itself, once it stands.
    gc.enable()
    if isinstance(given, arguments.Check):
        from elevation.commands.check import run_check

        return run_check(given)
    if isinstance(given, arguments.Draw):
        from elevation.commands.draw import run_draw

        return run_draw(given)
    if isinstance(given, arguments.Sheets):
        from elevation.commands.sheets import run_sheets

        return run_sheets(given)
    from elevation.commands.desktop import run_desktop

    return run_desktop(given)
