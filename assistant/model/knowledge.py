"""The knowledge base that reasoning and dialogue read: frozen records, decoded on demand (layer 2).

It stands on a ``Store`` of rows, in memory or compiled to a file, and gives the same records from either. It is
read-only and safe to share between threads (a race costs a second decoding, nothing else).
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import cached_property
from typing import TYPE_CHECKING, Any, Literal, Protocol, TypeVar, overload

from assistant.errors import MissingRecord
from assistant.iris import local
from assistant.model import records as r
from assistant.model.schema import BY_NAME, decode

if TYPE_CHECKING:
    from assistant.model.regulations import Obligation

T = TypeVar("T")
FORMER = "former"
"""The kind of a name that was the accepted one before a rename."""


class Store(Protocol):
    """Rows by kind and key; ``get`` of a grouped kind gives a list of rows, of a shared kind one row."""

    version: str

    def keys(self, kind: str) -> Sequence[str]:
        """The sorted keys of a kind."""

    def get(self, kind: str, key: str) -> list[Any] | None:
        """The row (or rows) under a key, None when there is none."""


class MemoryStore:
    """Rows held in memory, as ``model.build`` makes them."""

    def __init__(self, shared: dict[str, dict[str, list[Any]]], grouped: dict[str, dict[str, list[list[Any]]]],
                 version: str) -> None:
        self._rows: dict[str, dict[str, list[Any]]] = {**shared, **grouped}
        self.version = version

    def keys(self, kind: str) -> Sequence[str]:
        """The sorted keys of a kind."""
        return tuple(self._rows.get(kind, {}))

    def get(self, kind: str, key: str) -> list[Any] | None:
        """The row (or rows) under a key, None when there is none."""
        return self._rows.get(kind, {}).get(key)


class KnowledgeBase:
    """Frozen records of one version of a base."""

    def __init__(self, store: Store) -> None:
        self.store = store
        self.version = store.version
        self._cache: dict[tuple[str, str], Any] = {}

    # one record ---------------------------------------------------------------------------------------------

    @overload
    def find(self, kind: Literal["taxon"], key: str) -> r.Taxon | None: ...
    @overload
    def find(self, kind: Literal["character"], key: str) -> r.Character | None: ...
    @overload
    def find(self, kind: Literal["group"], key: str) -> r.Group | None: ...
    @overload
    def find(self, kind: Literal["term"], key: str) -> r.Term | None: ...
    @overload
    def find(self, kind: Literal["place"], key: str) -> r.Place | None: ...
    @overload
    def find(self, kind: Literal["source"], key: str) -> r.Source | None: ...
    @overload
    def find(self, kind: Literal["frequency"], key: str) -> r.Frequency | None: ...
    @overload
    def find(self, kind: Literal["caution"], key: str) -> r.Caution | None: ...
    @overload
    def find(self, kind: Literal["practice"], key: str) -> r.Practice | None: ...
    @overload
    def find(self, kind: Literal["word"], key: str) -> r.WordFamily | None: ...
    @overload
    def find(self, kind: Literal["leaning"], key: str) -> r.Leaning | None: ...
    @overload
    def find(self, kind: Literal["obligation"], key: str) -> Obligation | None: ...
    @overload
    def find(self, kind: str, key: str) -> Any | None: ...
    def find(self, kind: str, key: str) -> Any | None:
        """The record of a shared kind under a key, or None."""
        slot = (kind, key)
        if slot not in self._cache:
            row = self.store.get(kind, key)
            self._cache[slot] = None if row is None else decode(BY_NAME[kind], row)
        return self._cache[slot]

    def group(self, kind: str, key: str) -> tuple[Any, ...]:
        """The records of a grouped kind under a key (a taxon for statements, a character for states)."""
        slot = (kind, key)
        if slot not in self._cache:
            rows = self.store.get(kind, key) or ()
            self._cache[slot] = tuple(decode(BY_NAME[kind], row) for row in rows)
        return self._cache[slot]  # type: ignore[no-any-return]

    def ids(self, kind: str) -> Sequence[str]:
        """The sorted keys of a kind."""
        return self.store.keys(kind)

    # typed access -------------------------------------------------------------------------------------------

    def taxon(self, key: str) -> r.Taxon:
        """The taxon with this id; MissingRecord when the base lacks it."""
        found = self.find("taxon", key)
        if found is None:
            raise MissingRecord("taxon", key)
        return found

    def character(self, key: str) -> r.Character:
        """The character with this id; MissingRecord when the base lacks it."""
        found = self.find("character", key)
        if found is None:
            raise MissingRecord("character", key)
        return found

    def names(self, taxon: str) -> tuple[r.Name, ...]:
        """The names of a taxon."""
        return self.group("name", taxon)

    def statements(self, taxon: str) -> tuple[r.Statement, ...]:
        """The statements made of this very taxon (nothing inherited)."""
        return self.group("statement", taxon)

    def statements_on(self, taxon: str, character: str) -> tuple[r.Statement, ...]:
        """The statements made of this very taxon about one character."""
        slot = ("statements-on", taxon)
        if slot not in self._cache:
            sorted_out: dict[str, list[r.Statement]] = {}
            for statement in self.statements(taxon):
                sorted_out.setdefault(statement.character, []).append(statement)
            self._cache[slot] = {key: tuple(found) for key, found in sorted_out.items()}
        return self._cache[slot].get(character, ())  # type: ignore[no-any-return]

    def told_of(self, taxon: str) -> tuple[str, ...]:
        """Ids of the characters of which something is stated of this very taxon, sorted."""
        self.statements_on(taxon, "")
        return tuple(sorted(self._cache["statements-on", taxon]))

    def ranges(self, taxon: str) -> tuple[r.Range, ...]:
        """Where the taxon is said to live or not."""
        return self.group("range", taxon)

    def look_alikes(self, taxon: str) -> tuple[r.LookAlike, ...]:
        """The look-alikes listed with this taxon."""
        return self.group("look-alike", taxon)

    def sizes(self, taxon: str) -> tuple[r.SizeRecord, ...]:
        """Standard-weight lines, size categories and length conversions of a taxon."""
        return self.group("size", taxon)

    def states(self, character: str) -> tuple[r.State, ...]:
        """The states of a character, ordered ones in their order, umbrellas included."""
        slot = ("states", character)
        if slot not in self._cache:
            found: tuple[r.State, ...] = self.group("state", character)
            self._cache[slot] = tuple(sorted(found, key=lambda s: (s.order is None, s.order or 0, s.id)))
        return self._cache[slot]  # type: ignore[no-any-return]

    def state(self, key: str) -> r.State:
        """The state with this id ("character.state"); MissingRecord when the base lacks it."""
        for state in self.group("state", key.partition(".")[0]):
            if state.id == key:
                return state  # type: ignore[no-any-return]
        raise MissingRecord("state", key)

    def source(self, key: str) -> r.Source:
        """The source with this id; MissingRecord when the base lacks it."""
        found = self.find("source", key)
        if found is None:
            raise MissingRecord("source", key)
        return found

    def place(self, key: str) -> r.Place | None:
        """The place with this id, or None."""
        return self.find("place", key)

    def record_at(self, iri: str) -> Any | None:
        """The record behind a full IRI or short form of a statement, name, range, look-alike, size or shared record."""
        for kind in BY_NAME.values():
            marker = f"/{_folder(kind.prefix)}/"
            if marker in iri or iri.startswith(f"{kind.prefix}:"):
                key = local(iri)
                group = key.partition(".")[0]
                found = self.group(kind.name, group) if kind.by else (self.find(kind.name, key),)
                if (record := next((x for x in found if x is not None and x.id == key), None)) is not None:
                    return record
        return None

    def spoken(self, phrase: str) -> tuple[tuple[str, str, str], ...]:
        """What a folded phrase (``text.key``) stands for: (kind, id, how it is called so); empty when unknown.

        A former name leads to its taxon as the accepted one does, unless another is called so by right now.
        """
        found = tuple((kind, thing, how) for kind, thing, how in self.store.get("spoken", phrase) or ())
        if not any(how == FORMER for _, _, how in found):
            return found
        taken = any((kind, how) == ("taxon", "accepted") and not self.taxon(t).deprecated for kind, t, how in found)
        way = "vernacular" if taken else "accepted"
        return tuple((kind, thing, way if how == FORMER else how) for kind, thing, how in found)

    def derived(self, name: str, make: Callable[[KnowledgeBase], T]) -> T:
        """Something made from this base once, on demand, and kept with it (an index, a lexicon)."""
        slot = ("derived", name)
        if slot not in self._cache:
            self._cache[slot] = make(self)
        return self._cache[slot]  # type: ignore[no-any-return]

    # whole tables -------------------------------------------------------------------------------------------

    @overload
    def all(self, kind: Literal["taxon"]) -> tuple[r.Taxon, ...]: ...
    @overload
    def all(self, kind: Literal["character"]) -> tuple[r.Character, ...]: ...
    @overload
    def all(self, kind: Literal["group"]) -> tuple[r.Group, ...]: ...
    @overload
    def all(self, kind: Literal["term"]) -> tuple[r.Term, ...]: ...
    @overload
    def all(self, kind: Literal["place"]) -> tuple[r.Place, ...]: ...
    @overload
    def all(self, kind: Literal["source"]) -> tuple[r.Source, ...]: ...
    @overload
    def all(self, kind: Literal["frequency"]) -> tuple[r.Frequency, ...]: ...
    @overload
    def all(self, kind: Literal["caution"]) -> tuple[r.Caution, ...]: ...
    @overload
    def all(self, kind: Literal["practice"]) -> tuple[r.Practice, ...]: ...
    @overload
    def all(self, kind: Literal["obligation"]) -> tuple[Obligation, ...]: ...
    @overload
    def all(self, kind: str) -> tuple[Any, ...]: ...
    def all(self, kind: str) -> tuple[Any, ...]:
        """Every record of a shared kind, by id."""
        return tuple(self.find(kind, key) for key in self.ids(kind))

    @cached_property
    def species(self) -> tuple[str, ...]:
        """Ids of everything that an identification may name: crosses, and species or their subspecies where held."""
        return tuple(self.store.get("list", "species") or ())

    @cached_property
    def children(self) -> dict[str, tuple[str, ...]]:
        """Taxon id to the ids of the taxa directly below it."""
        return {key: self.children_of(key) for key in self.ids("children")}

    def children_of(self, taxon: str) -> tuple[str, ...]:
        """Ids of the taxa directly below a taxon."""
        return tuple(self.store.get("children", taxon) or ())

    def crosses_of(self, taxon: str) -> tuple[str, ...]:
        """Ids of the crosses that a taxon is a parent of."""
        return tuple(self.store.get("crosses", taxon) or ())

    def taken_for(self, taxon: str) -> tuple[str, ...]:
        """Ids of the taxa that list this one as a look-alike."""
        return tuple(self.store.get("taken-for", taxon) or ())

    @cached_property
    def characters(self) -> tuple[r.Character, ...]:
        """Every character, by id."""
        return self.all("character")

    def lineage(self, taxon: str) -> tuple[str, ...]:
        """The taxon and what stands above it, nearest first."""
        slot = ("lineage", taxon)
        if slot not in self._cache:
            out: list[str] = []
            current: str | None = taxon
            while current and current not in out:
                out.append(current)
                found = self.find("taxon", current)
                current = found.parent if found else None
            self._cache[slot] = tuple(out)
        return self._cache[slot]  # type: ignore[no-any-return]

    def members(self, key: str) -> tuple[str, ...]:
        """The species below a taxon or in a group, or the species itself; crosses only where a group lists them."""
        if (group := self.find("group", key)) is not None:
            crosses = {m for m in group.members if (t := self.find("taxon", m)) is not None and t.is_hybrid}
            return tuple(sorted(crosses | {s for m in group.members for s in self._species_below(m)}))
        return self._species_below(key)

    def _species_below(self, key: str) -> tuple[str, ...]:
        found = self.find("taxon", key)
        if found is None:
            return ()
        below = tuple(sorted({s for c in self.children.get(key, ()) for s in self._species_below(c)}))
        own = (key,) if found.is_species and not found.is_hybrid and not found.deprecated else ()
        return own + tuple(s for s in below if s not in own)


def _folder(prefix: str) -> str:
    from assistant.iris import PREFIXES

    return PREFIXES[prefix].rstrip("/").rpartition("/")[2]
