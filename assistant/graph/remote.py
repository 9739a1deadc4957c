"""A SPARQL 1.1 server: query and update over HTTP, nothing else (layer 1).

Credentials come from TELLFIN_USER and TELLFIN_PASSWORD or a netrc file, never from the address, and are sent over
https or to this machine only. What goes wrong is one ToolError that names the server without them.
"""

from __future__ import annotations

import base64
import http.client
import netrc
import os
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from pathlib import Path
from urllib.parse import SplitResult, urlencode, urlsplit

from assistant.errors import DataError, ToolError, UsageError
from assistant.graph.load import full_iri
from assistant.graph.read import read_bytes
from assistant.graph.triples import node_triples, parse_triples
from assistant.graph.values import Literal, Node, Value

HOME = full_iri("tf:")
"""The node that holds the revision of a served base: its ontology."""
REVISION = full_iri("tf:revision")
LARGEST_ANSWER = 500_000_000
_LOCAL = ("localhost", "127.0.0.1", "::1")


@dataclass(frozen=True, slots=True)
class Server:
    """The query and update addresses of a server, and how long to wait for it (seconds)."""

    query_url: str
    update_url: str
    patience: float = 20.0

    @property
    def shown(self) -> str:
        """The address as it may be shown."""
        return self.query_url


def server_at(address: str, patience: float = 20.0) -> Server:
    """The server of an address: ".../query" and ".../update" below it, unless it ends in /query or /sparql itself.

    Raises UsageError for an address with a name or password in it, or one that is no http(s) address.
    """
    parts = _parts(address)
    if parts.username or parts.password:
        raise UsageError("the address of a server must not hold a name or password",
                         "set TELLFIN_USER and TELLFIN_PASSWORD, or use a netrc file")
    if parts.scheme not in ("http", "https") or not parts.hostname:
        raise UsageError("is no address of a server", "such as https://base.example/tellfin", address)
    bare = address.rstrip("/")
    query = bare if bare.endswith(("/query", "/sparql")) else bare + "/query"
    update = os.environ.get("TELLFIN_UPDATE_URL") or query.rpartition("/")[0] + "/update"
    return Server(query, update, patience)


def _parts(address: str) -> SplitResult:
    try:
        parts = urlsplit(address)
        _ = parts.port
        return parts
    except ValueError as error:
        raise UsageError("is no address of a server", "such as https://base.example/tellfin") from error


def fetch_nodes(server: Server) -> dict[str, Node]:
    """Everything that a server holds, by CONSTRUCT. ToolError when it does not answer, or not with triples."""
    data = _ask(server, "CONSTRUCT { ?s ?p ?o } WHERE { ?s ?p ?o }", "application/n-triples",
                ("application/n-triples", "text/turtle", "text/plain"))
    try:
        nodes = read_bytes(data, Path("server"))
        for node in nodes.values():
            node.props = {p: [_settled(v) for v in values] for p, values in node.props.items()}
        return nodes
    except DataError as error:
        raise ToolError(f"the server's triples cannot be read: {error.message}", "is it a base of tellfin?",
                        server.shown) from error


def _settled(value: Value) -> Value:
    """A decimal in our shortest form: servers keep the number, not how it was written."""
    if isinstance(value, Literal) and value.datatype == "xsd:decimal":
        text = value.value if "." in value.value else value.value + ".0"
        return Literal(text, value.datatype)
    return value


def fetch_revision(server: Server) -> str:
    """The revision of a served base, empty when it has none yet."""
    query = f"SELECT ?r WHERE {{ <{HOME}> <{REVISION}> ?r }}"
    rows = _ask(server, query, "text/csv", ("text/csv",)).decode("utf-8", "replace").split()
    return rows[1].strip('"') if len(rows) > 1 else ""


def send_change(server: Server, old: str, new: str, change: Node, removed: Iterable[str], added: Iterable[str]) -> bool:
    """Change a served base in one request that holds only at the revision ``old``; False when another was first.

    ``removed`` and ``added`` are triples in short form, those of the record of the change among them. Whether it held
    is read from that record: the revision may have moved on again in between.
    """
    holds = f"<{HOME}> <{REVISION}> {_quoted(old)} ." if old else f"FILTER NOT EXISTS {{ <{HOME}> <{REVISION}> ?any }}"
    gone = f"<{HOME}> <{REVISION}> {_quoted(old)} .\n" if old else ""
    come = f"<{HOME}> <{REVISION}> {_quoted(new)} .\n"
    text = ("DELETE { " + gone + _block(removed) + "}\nINSERT { " + come + _block(added)
            + "}\nWHERE { " + holds + " }")
    _post(server, server.update_url, "application/sparql-update", text.encode("utf-8"), "*/*")
    found = f"SELECT ?type WHERE {{ <{full_iri(change.id)}> a ?type }}"
    return len(_ask(server, found, "text/csv", ("text/csv",)).split()) > 1


def load_nodes(server: Server, nodes: Iterable[Node]) -> None:
    """Add nodes to a server; used to found a served base."""
    triples = [text for node in nodes for text in node_triples(node)]
    for start in range(0, len(triples), 20_000):
        text = "INSERT DATA { " + _block(triples[start:start + 20_000]) + "}"
        _post(server, server.update_url, "application/sparql-update", text.encode("utf-8"), "*/*")


def _block(triples: Iterable[str]) -> str:
    """Triples in full: not every server reads all short forms that Turtle allows."""
    return "".join(f"<{full_iri(key)}> <{full_iri(predicate)}> {_full(value)} .\n"
                   for key, node in parse_triples(triples).items()
                   for predicate, values in node.props.items() for value in values)


def _full(value: Value) -> str:
    if not isinstance(value, Literal):
        return f"<{full_iri(value)}>"
    return _quoted(value.value) + (f"@{value.lang}" if value.lang else f"^^<{full_iri(value.datatype)}>")


def _quoted(text: str) -> str:
    plain = {"\\": "\\\\", '"': '\\"', "\n": "\\n", "\r": "\\r", "\t": "\\t"}
    return '"' + "".join(plain.get(c, c) for c in text) + '"'


def _ask(server: Server, query: str, accept: str, wanted: tuple[str, ...]) -> bytes:
    kind, data = _post(server, server.query_url, "application/x-www-form-urlencoded",
                       urlencode({"query": query}).encode(), accept)
    if not kind.startswith(wanted):
        raise ToolError(f"the server answered with {kind or 'nothing named'} instead of {accept}",
                        "is this the address of a SPARQL server?", server.shown)
    return data


def _post(server: Server, url: str, kind: str, body: bytes, accept: str) -> tuple[str, bytes]:
    parts = _parts(url)
    headers = {"Content-Type": kind, "Accept": accept, "User-Agent": "tellfin", **_credentials(parts)}
    maker = http.client.HTTPSConnection if parts.scheme == "https" else http.client.HTTPConnection
    link = maker(parts.hostname or "", parts.port, timeout=server.patience)
    try:
        link.request("POST", parts.path + (f"?{parts.query}" if parts.query else ""), body, headers)
        answer = link.getresponse()
        data = answer.read(LARGEST_ANSWER + 1)
    except TimeoutError as error:
        raise ToolError(f"the server did not answer within {server.patience:g} seconds", "try again later",
                        server.shown) from error
    except (OSError, http.client.HTTPException) as error:
        reason = getattr(error, "strerror", None) or type(error).__name__
        raise ToolError(f"the server cannot be reached: {reason}", "check the address and the network",
                        server.shown) from error
    finally:
        link.close()
    if len(data) > LARGEST_ANSWER:
        raise ToolError("the server's answer is too large", "is this a base of tellfin?", server.shown)
    _refuse_status(answer.status, answer.reason, server)
    return (answer.getheader("Content-Type") or "").lower(), data


def _refuse_status(status: int, reason: str, server: Server) -> None:
    if status in (401, 403):
        raise ToolError(f"the server refuses access ({status})", "set TELLFIN_USER and TELLFIN_PASSWORD, or use netrc",
                        server.shown)
    if not 200 <= status < 300:
        raise ToolError(f"the server answered {status} {reason[:60]}", "check its address and its log", server.shown)


def _credentials(parts: SplitResult) -> Mapping[str, str]:
    name, word = os.environ.get("TELLFIN_USER", ""), os.environ.get("TELLFIN_PASSWORD", "")
    if not name:
        name, word = _from_netrc(parts.hostname or "")
    if not name:
        return {}
    if parts.scheme != "https" and parts.hostname not in _LOCAL:
        raise UsageError("a name and password are only sent over https", "use the https address of the server")
    return {"Authorization": "Basic " + base64.b64encode(f"{name}:{word}".encode()).decode()}


def _from_netrc(host: str) -> tuple[str, str]:
    try:
        found = netrc.netrc().authenticators(host)
    except (OSError, netrc.NetrcParseError):
        return "", ""
    return (found[0] or "", found[2] or "") if found else ("", "")


