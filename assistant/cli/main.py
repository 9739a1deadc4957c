"""The ``tellfin`` command: global options, a table of commands loaded when called, one error boundary (layer 7).

A command is a module with ``NAME``, ``HELP``, ``add_arguments(parser)`` and ``execute(args, streams) -> int``; to
add one, write the file and give it a line in ``COMMANDS``. Its module level stays light: what is heavy (rdflib,
pyshacl, prompt_toolkit) is imported inside ``execute``. Every command finds ``args.base`` (the text of ``--base``
or of TELLFIN_BASE, else None) and ``args.debug``.

Exit codes: 0 fine, 1 the data are at fault, 2 wrong use, 3 the tool failed, 130 stopped by Ctrl-C.
"""

from __future__ import annotations

import argparse
import errno
import importlib
import os
import sys
from collections.abc import Sequence
from types import ModuleType
from typing import IO, NoReturn, TextIO

from assistant import __version__
from assistant.cli.streams import Streams
from assistant.errors import AssistantError, ToolError, UsageError

COMMANDS: dict[str, str] = {
    "chat": "chat",
    "ask": "ask",
    "compare": "compare",
    "key": "key",
    "sheet": "sheet",
    "quiz": "quiz",
    "check": "check",
    "format": "format",
    "new-base": "new_base",
    "add": "add",
    "correct": "correct",
    "retract": "retract",
    "history": "history",
    "undo": "undo",
    "import": "import_sheet",
    "export": "export_sheet",
    "rename": "rename",
    "split": "split",
    "lump": "lump",
    "gaps": "gaps",
    "query": "query",
    "compare-bases": "compare_bases",
}
"""Command name to module name below ``assistant.cli``, in the order in which help lists them."""

DEFAULT = "chat"
"""The command that runs when none is named (help is shown while it is not in the table)."""

LONGEST_SHOWN = 200
"""Characters of what was typed that are said again."""
EPILOG = ("exit codes: 0 fine, 1 the data are at fault, 2 wrong use, 3 tellfin itself, the disk or a server failed, "
          "130 stopped by Ctrl-C")


class _Done(Exception):
    """Raised in place of SystemExit by the parsers; carries the exit code."""

    def __init__(self, code: int) -> None:
        super().__init__(code)
        self.code = code


class _Layout(argparse.HelpFormatter):
    """Help as wide as the terminal, asked for without the modules that argparse loads to find out.

    A parser makes one for every option it is given, shown or not.
    """

    def __init__(self, prog: str) -> None:
        super().__init__(prog, width=_terminal_width() - 2)


def _terminal_width() -> int:
    told = os.environ.get("COLUMNS", "")
    if told.isdigit() and int(told):
        return int(told)
    try:
        return os.get_terminal_size(1).columns or 80
    except OSError:
        return 80


class _Parser(argparse.ArgumentParser):
    """An argument parser that writes to the given streams and raises our errors instead of leaving the process."""

    streams: Streams

    def error(self, message: str) -> NoReturn:
        """Wrong use, as an error of ours."""
        raise UsageError(message, f"see {self.prog} --help")

    def exit(self, status: int = 0, message: str | None = None) -> NoReturn:
        """Help or version was shown: leave the parser, not the process."""
        if message:
            self.streams.stderr.write(message)
        raise _Done(status)

    def _print_message(self, message: str, file: IO[str] | None = None) -> None:  # type: ignore[override]
        if message:
            self.streams.stdout.write(message)


def main(argv: Sequence[str], stdin: TextIO, stdout: TextIO, stderr: TextIO) -> int:
    """Run one command and return its exit code; never raises unless ``--debug`` is given."""
    streams = Streams(stdin, stdout, stderr)
    code = _guarded(list(argv), streams)
    try:
        stdout.flush()
    except BrokenPipeError:
        _close_quietly(stdout)
    except OSError as error:
        _close_quietly(stdout)
        code = code or _told(_of_the_system(error), streams)
    return code


def _guarded(argv: list[str], streams: Streams) -> int:
    """The one error boundary of the command line."""
    debug = "--debug" in argv
    try:
        return _dispatch(argv, streams)
    except _Done as done:
        return done.code
    except BrokenPipeError:
        _close_quietly(streams.stdout)
        return 0
    except KeyboardInterrupt:
        streams.err("stopped")
        return 130
    except AssistantError as error:
        if debug:
            raise
        return _told(error, streams)
    except OSError as error:
        if debug:
            raise
        return _told(_of_the_system(error), streams)
    except Exception as error:
        if debug:
            raise
        return _told(unforeseen(error), streams)


def run() -> None:
    """The console script: real streams, real exit code; one thread for sums this small (more start slower)."""
    os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")
    for stream in (sys.stdin, sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(errors="replace")
    sys.exit(main(sys.argv[1:], sys.stdin, sys.stdout, sys.stderr))


def load_command(name: str, after: Sequence[str] = ()) -> ModuleType:
    """The module of a command; UsageError with near names when there is none, or with the way to ask what was typed
    (``after`` are the words behind)."""
    if name not in COMMANDS:
        import difflib

        near = difflib.get_close_matches(name, COMMANDS, n=1)
        typed = " ".join([name, *after]).replace('"', "'")[:LONGEST_SHOWN]
        hint = f"did you mean '{near[0]}'?" if near else \
            f'a question is asked so: tellfin ask "{typed}"; tellfin --help lists the commands'
        raise UsageError(f"there is no command '{name}'", hint)
    return importlib.import_module(f"assistant.cli.{COMMANDS[name]}")


def _dispatch(argv: list[str], streams: Streams) -> int:
    before, rest = _split(argv)
    shared = _global_parser("tellfin", streams)
    if not rest and DEFAULT in COMMANDS and not {"-h", "--help", "--version"} & set(before):
        rest = [DEFAULT]
    if not rest:
        shared.parse_args(before)
        streams.stdout.write(_overview(shared))
        return 0
    command = load_command(rest[0], rest[1:])
    parser = _global_parser(f"tellfin {command.NAME}", streams, command.HELP)
    command.add_arguments(parser)
    args = parser.parse_intermixed_args([*rest[1:], *before])
    args.base = args.base or os.environ.get("TELLFIN_BASE") or None
    return int(command.execute(args, streams))


def _split(argv: list[str]) -> tuple[list[str], list[str]]:
    """Global options that stand before the command, and the command with all that follows it."""
    index = 0
    while index < len(argv) and argv[index].startswith("-"):
        index += 2 if argv[index] == "--base" else 1
    return argv[:index], argv[index:]


def _global_parser(prog: str, streams: Streams, description: str = "") -> _Parser:
    parser = _Parser(prog=prog, description=description or "Tell one freshwater fish from another.",
                     epilog=EPILOG, allow_abbrev=False, formatter_class=_Layout)
    parser.streams = streams
    parser.add_argument("--base", metavar="DIR", help="the base to use: a folder of Turtle files or a server's address "
                        "(else TELLFIN_BASE, else the shipped base)")
    parser.add_argument("--debug", action="store_true", help="show the full trace of a failure")
    parser.add_argument("--version", action="version", version=f"tellfin {__version__}")
    if prog == "tellfin":
        parser.usage = "tellfin [--base DIR] [--debug] [COMMAND ...]"
        parser.format_help = lambda: _overview(parser)  # type: ignore[method-assign]
    return parser


def _overview(parser: argparse.ArgumentParser) -> str:
    width = max((len(n) for n in COMMANDS), default=0)
    rows = [f"  {n.ljust(width)}  {load_command(n).HELP}" for n in COMMANDS]
    text = argparse.ArgumentParser.format_help(parser)
    head, _, tail = text.partition("\nexit codes:")
    return head + "\ncommands (tellfin COMMAND --help tells more):\n" + "\n".join(rows) + "\n\nexit codes:" + tail


def _told(error: AssistantError, streams: Streams) -> int:
    """Tell an error in a line or two; gives its exit code."""
    where = f"{error.where}: " if error.where else ""
    streams.err(f"tellfin: {where}{error.message}")
    if error.hint:
        streams.err(f"  {error.hint}")
    return error.exit_code


def _of_the_system(error: OSError) -> AssistantError:
    """What the system refused (a full disk, a lost file, permissions) in its own words."""
    if not error.strerror:
        return unforeseen(error)
    full = error.errno in (errno.ENOSPC, errno.EDQUOT)
    what = "the disk is full" if full else f"the system refused: {error.strerror.lower()}"
    return ToolError(what, "free some space and try again" if full else "--debug shows where it happened",
                     str(error.filename or ""))


def unforeseen(error: Exception) -> AssistantError:
    """Save the trace of an error that is not ours and describe it in one line."""
    import traceback

    text = "".join(traceback.format_exception(error))
    try:
        from datetime import UTC, datetime

        import platformdirs

        folder = platformdirs.user_log_path("tellfin", appauthor=False)
        folder.mkdir(parents=True, exist_ok=True)
        path = folder / f"failure-{datetime.now(UTC):%Y%m%dT%H%M%S}-{os.getpid()}.log"
        path.write_text(text, encoding="utf-8")
        hint = f"the details are in {path}; --debug shows them here"
    except (OSError, RuntimeError):
        hint = "--debug shows the details"
    return AssistantError(f"something went wrong inside ({type(error).__name__})", hint)


def _close_quietly(stream: TextIO) -> None:
    """Point a closed pipe at nothing, so that the interpreter does not complain while leaving."""
    try:
        os.dup2(os.open(os.devnull, os.O_WRONLY), stream.fileno())
    except (OSError, ValueError):
        return
