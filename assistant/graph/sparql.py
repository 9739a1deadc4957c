"""Read-only SPARQL over a folder, in a process of its own that is stopped when it takes too long (layer 1).

Run as a module it reads a request (JSON) from standard input and writes the result; ``ask_folder`` starts it so.
"""

from __future__ import annotations

import json
import re
import subprocess
import sys
from pathlib import Path

from assistant.errors import DataError, ToolError, UsageError
from assistant.graph.read import turtle_files
from assistant.iris import PREFIXES, compact

FORMATS = ("table", "csv", "json", "turtle")
_HIDDEN = re.compile(r"""#[^\n]*|<[^<>"{}|^`\\\s]*>|\"\"\".*?\"\"\"|'''.*?'''"""
                     r"""|"(?:[^"\\\n]|\\.)*"|'(?:[^'\\\n]|\\.)*'""", re.S)
_WORD = re.compile(r"(?<![?$:\w.-])([A-Za-z]+)(?![\w:-])")
_DOTTED = re.compile(r"(?<![\w:?$-])([a-z]+):([A-Za-z0-9_-]+(?:\.[A-Za-z0-9_-]+){2,})")
_FORMS = ("SELECT", "ASK", "CONSTRUCT")
_REFUSED = frozenset({"INSERT", "DELETE", "LOAD", "CLEAR", "DROP", "CREATE", "ADD", "MOVE", "COPY", "SERVICE",
                      "DESCRIBE"})
_MEMORY = 4_000_000_000


def query_form(query: str) -> str:
    """SELECT, ASK or CONSTRUCT. UsageError for anything else, and for what would change or leave the base."""
    words = [w.upper() for w in _WORD.findall(_HIDDEN.sub(" ", query))]
    refused = sorted(_REFUSED & set(words))
    if refused:
        raise UsageError(f"{refused[0]} is not allowed here", "queries read this base only: SELECT, ASK or CONSTRUCT")
    form = next((w for w in words if w in _FORMS), "")
    if not form:
        raise UsageError("the query is no SELECT, ASK or CONSTRUCT", "for example: SELECT ?t WHERE { ?t a dwc:Taxon }")
    return form


def ask_folder(folder: Path, query: str, form: str, seconds: float) -> str:
    """The result of a query over a folder as text of a form (see ``FORMATS``).

    Raises UsageError for a query that may not be asked or does not parse, ToolError when it takes too long.
    """
    kind = query_form(query)
    if form == "turtle" and kind != "CONSTRUCT":
        raise UsageError(f"the result of {kind} is no Turtle", "choose --format table, csv or json")
    request = json.dumps({"folder": str(folder), "query": with_prefixes(query), "form": form})
    try:
        done = subprocess.run([sys.executable, "-m", "assistant.graph.sparql"], input=request.encode(),
                              capture_output=True, timeout=seconds, check=False, cwd=Path(__file__).parents[2])
    except subprocess.TimeoutExpired as error:
        raise ToolError(f"the query took longer than {seconds:g} seconds and was stopped",
                        "narrow it, or give --seconds") from error
    if done.returncode == 2:
        message, _, hint = done.stderr.decode("utf-8", "replace").partition("\n")
        raise UsageError(message, hint)
    if done.returncode != 0:
        reason = done.stderr.decode("utf-8", "replace").strip().splitlines()
        raise ToolError(f"the query failed: {reason[-1] if reason else 'the process ended'}", "narrow it")
    return done.stdout.decode("utf-8")


def with_prefixes(query: str) -> str:
    """The query with our prefixes in front; its own declarations come later and win.

    Names with dots in them ("st:TAXON.CHARACTER.any.SOURCE") are written in full: the engine reads no two dots.
    """
    declared = {p.lower() for p in re.findall(r"prefix\s+([\w-]*):", query, re.I)}
    parts: list[str] = []
    last = 0
    for hidden in _HIDDEN.finditer(query):
        parts += [_in_full(query[last:hidden.start()], declared), hidden.group()]
        last = hidden.end()
    body = "".join([*parts, _in_full(query[last:], declared)])
    return "".join(f"PREFIX {p}: <{iri}>\n" for p, iri in PREFIXES.items()) + body


def _in_full(text: str, declared: set[str]) -> str:
    def full(match: re.Match[str]) -> str:
        prefix = match.group(1)
        if prefix not in PREFIXES or prefix in declared:
            return match.group()
        return f"<{PREFIXES[prefix]}{match.group(2)}>"

    return _DOTTED.sub(full, text)


def _work(request: dict[str, str]) -> bytes:
    import pyoxigraph as ox

    store = ox.Store()
    for path in turtle_files(Path(request["folder"])):
        store.load(path=str(path), format=ox.RdfFormat.TURTLE)
    result = store.query(request["query"])
    if isinstance(result, ox.QueryTriples):
        return ox.serialize(result, format=ox.RdfFormat.TURTLE, prefixes=dict(PREFIXES)) or b""
    if request["form"] == "table":
        return _as_table(result).encode("utf-8")
    if isinstance(result, ox.QueryBoolean):
        text = json.dumps({"head": {}, "boolean": bool(result)})
        return text.encode() if request["form"] == "json" else (b"true\n" if result else b"false\n")
    wanted = ox.QueryResultsFormat.JSON if request["form"] == "json" else ox.QueryResultsFormat.CSV
    return result.serialize(format=wanted) or b""


def _as_table(result: object) -> str:
    import pyoxigraph as ox

    if isinstance(result, ox.QueryBoolean):
        return "yes\n" if result else "no\n"
    assert isinstance(result, ox.QuerySolutions)
    names = [v.value for v in result.variables]
    rows = [[_shown(s[n]) for n in names] for s in result]
    widths = [min(60, max([len(n), *(len(r[i]) for r in rows)])) for i, n in enumerate(names)]
    lines = ["  ".join(c.ljust(w) for c, w in zip(row, widths, strict=True)).rstrip() for row in [names, *rows]]
    return "\n".join([*lines, f"{len(rows)} row{'' if len(rows) == 1 else 's'}"]) + "\n"


def _shown(term: object) -> str:
    if term is None:
        return ""
    value = str(getattr(term, "value", term))
    return compact(value) if type(term).__name__ == "NamedNode" else value


def _limit_memory() -> None:
    if sys.platform != "win32":
        import resource

        resource.setrlimit(resource.RLIMIT_AS, (_MEMORY, _MEMORY))


def reading_fault(text: str, query: str) -> tuple[str, str]:
    """What a parser complains of in a query with prefixes in front, its lines counted as they were typed; a hint."""
    match = re.match(r"error at (\d+):(\d+)", text)
    if match is None:
        return f"the query cannot be read: {text.splitlines()[0][:160]}", ""
    line, column = int(match.group(1)), int(match.group(2))
    rows = query.splitlines()
    before, after = (rows[line - 1][:column - 1], rows[line - 1][column - 1:]) if line <= len(rows) else ("", "")
    place = f"line {line - len(PREFIXES)}, column {column}"
    if "Prefix not found" in text and (name := re.search(r"([\w-]*):[\w.-]*$", before)):
        return f"the query cannot be read: {place}: the prefix {name.group(1)}: is not declared", \
            f"ready without a declaration: {', '.join(PREFIXES)}"
    if not after.strip() and not "".join(rows[line:]).strip():
        return f"the query cannot be read: {place}: it ends too early", "a bracket, a brace or a quote is still open"
    return f"the query cannot be read: {place}, at {(after.strip() or 'the end of the line')[:40]!r}", \
        "something before it is missing or misspelt"


def _main() -> int:
    _limit_memory()
    request = json.loads(sys.stdin.buffer.read())
    try:
        sys.stdout.buffer.write(_work(request))
    except (SyntaxError, ValueError) as error:
        sys.stderr.write("\n".join(reading_fault(str(error), request["query"])))
        return 2
    except (DataError, OSError, RuntimeError, MemoryError) as error:
        sys.stderr.write(str(error) or type(error).__name__)
        return 3
    return 0


if __name__ == "__main__":
    sys.exit(_main())
