"""A base on a SPARQL 1.1 server: read through CONSTRUCT, changed by one update that holds at one revision only
(layer 4).

Two curators cannot overwrite one another: the update names the revision it was prepared on, and where another change
came first it is prepared anew on what then stands. The last answer is kept as a snapshot, so that questions can be
answered, as of its date, when the server is away.
"""

from __future__ import annotations

import hashlib
import json
import random
import shutil
import time
import uuid
from collections.abc import Callable, Iterable, Mapping
from datetime import UTC, datetime
from pathlib import Path

from assistant.curation.files import replace_file, write_synced
from assistant.curation.history import Author
from assistant.curation.mint import safe_name
from assistant.curation.stores import read_name, write_name
from assistant.curation.transact import Outcome, Work, prepare
from assistant.curation.validate import Validator
from assistant.curation.view import many, one
from assistant.errors import ToolError
from assistant.graph.lines import Index
from assistant.graph.load import paused_collector
from assistant.graph.remote import Server, fetch_nodes, fetch_revision, load_nodes, send_change, server_at
from assistant.graph.triples import node_triples
from assistant.graph.values import Node
from assistant.graph.write import write_nodes

ATTEMPTS = 200
_GROUPED = ("st", "name", "range", "alike", "size", "state")
_ONTOLOGY = "https://tellfin.example/vocab/"


class ServerStore:
    """A base on a server, ready to be changed."""

    def __init__(self, address: str, shapes: Path, patience: float = 20.0) -> None:
        self.server: Server = server_at(address, patience)
        self.address = address
        self.validator = Validator(shapes)

    def transact(self, author: Author, when: datetime, work: Work, dry_run: bool = False) -> Outcome:
        """Make one change, or refuse it, or only try it. ToolError when others keep coming first."""
        for attempt in range(ATTEMPTS):
            revision = fetch_revision(self.server)
            with paused_collector():
                index = self.index()
                changes = changes_of(index)
                number = max((int(one(c, "tf:changeNumber") or 0) for c in changes), default=0) + 1
                moments = [datetime.fromisoformat(one(c, "prov:startedAtTime")) for c in changes]
                ready = prepare(index, self.validator, author, max([when, *moments]), work, number)
            if ready.node is None or dry_run:
                return ready.outcome
            added = [*many(ready.node, "tf:added"), *node_triples(ready.node)]
            token, removed = f"{number}-{uuid.uuid4().hex}", many(ready.node, "tf:removed")
            if send_change(self.server, revision, token, ready.node, removed, added):
                return ready.outcome
            time.sleep(random.uniform(0.0, 0.02 * min(attempt + 1, 10)))
        raise ToolError("other changes kept coming first", "try again when it is quieter", self.server.shown)

    def changes(self) -> list[Node]:
        """Every change, oldest first."""
        return changes_of(self.index())

    def index(self) -> Index:
        """The base as the server now holds it."""
        return Index(Path("server"), {Path("server") / k: v for k, v in as_files(fetch_nodes(self.server)).items()})

    def curator(self) -> str:
        """The name remembered on this machine, or empty."""
        return read_name(cache_of(self.address) / "curator")

    def remember(self, name: str) -> None:
        """Remember the curator's name on this machine."""
        write_name(cache_of(self.address) / "curator", name)


def changes_of(index: Index) -> list[Node]:
    """The changes of a base, oldest first."""
    keys = index.ids("change")
    index.fetch(keys)
    nodes = [n for n in map(index.node, keys) if n is not None and "tf:Change" in n.types()]
    return sorted(nodes, key=lambda n: (int(one(n, "tf:changeNumber") or 0), n.id))


def as_files(nodes: Mapping[str, Node]) -> dict[str, bytes]:
    """Nodes as canonical files, the same for the same nodes; the revision of the server is left out."""
    files: dict[str, list[Node]] = {}
    for node in nodes.values():
        if node.id == _ONTOLOGY:
            node.props.pop("tf:revision", None)
        if node.props:
            files.setdefault(file_for(node.id), []).append(node)
    return {name: write_nodes(members).encode("utf-8") for name, members in sorted(files.items())}


def file_for(key: str) -> str:
    """The file that a node of a served base stands in, when it is written as a folder."""
    prefix, _, local = key.partition(":")
    if "//" in local:
        return "vocabulary/core.ttl"
    if prefix == "change":
        return f"changes/{safe_name(local)}.ttl"
    if prefix in _GROUPED:
        return f"{prefix}/{safe_name(local.partition('.')[0])}.ttl"
    return f"{safe_name(prefix)}/all.ttl"


def found_on_server(address: str, nodes: Iterable[Node]) -> None:
    """Put the nodes of a base on an empty server. ToolError when it is not empty."""
    server = server_at(address)
    if fetch_nodes(server):
        raise ToolError("the server is not empty", "a base is founded on an empty one", server.shown)
    load_nodes(server, nodes)


def cache_of(address: str) -> Path:
    """The folder on this machine for the snapshots of a server."""
    import platformdirs

    mark = hashlib.blake2b(address.rstrip("/").encode(), digest_size=8).hexdigest()
    return platformdirs.user_cache_path("tellfin", appauthor=False) / "served" / mark


def snapshot_folder(address: str, tell: Callable[[str], None], patience: float = 20.0) -> Path:
    """A folder with what a server holds now, or held when it last answered (then ``tell`` says so).

    Raises ToolError when the server does not answer and there is no snapshot either.
    """
    server, cache = server_at(address, patience), cache_of(address)
    try:
        files = as_files(fetch_nodes(server))
    except ToolError as error:
        return _last_snapshot(cache, error, tell)
    digest = hashlib.blake2b(digest_size=8)
    for name, data in files.items():
        digest.update(name.encode() + b"\0" + data)
    folder = cache / digest.hexdigest()
    if not folder.is_dir():
        stage = cache / f"{folder.name}.{uuid.uuid4().hex}"
        for name, data in files.items():
            (stage / name).parent.mkdir(parents=True, exist_ok=True)
            write_synced(stage / name, data)
        try:
            stage.rename(folder)
        except OSError:
            shutil.rmtree(stage, ignore_errors=True)
    stamp = {"folder": folder.name, "as_of": datetime.now(UTC).strftime("%Y-%m-%d %H:%M UTC")}
    replace_file(cache / "current.json", json.dumps(stamp).encode())
    return folder


def _last_snapshot(cache: Path, error: ToolError, tell: Callable[[str], None]) -> Path:
    try:
        stamp = json.loads((cache / "current.json").read_bytes())
        folder = cache / str(stamp["folder"])
    except (OSError, ValueError, KeyError):
        raise error from None
    if not folder.is_dir():
        raise error
    tell(f"{error.where}: {error.message}; answering from the snapshot as of {stamp['as_of']}")
    return folder
