"""What a curator's words stand for in a base: exact matches only, with candidates where there is none (layer 4)."""

from __future__ import annotations

import difflib

from assistant.curation.view import View, many, one
from assistant.errors import DataError
from assistant.text import fold, singular, slug, unique

_FEW = 6
"""Look-ups that search the text of the base before a table is made."""

_GROUP = ("skos:prefLabel", "tf:plural", "skos:altLabel")
"""Properties by which a group is called."""
_LEADING = ("tf:accepted", "tf:former")
"""Kinds of names that lead to their taxon though others are called so, too."""


class Lookup:
    """Ids behind words, read once from a view; a near match is offered, never taken."""

    def __init__(self, view: View, adding: bool = True) -> None:
        """``adding`` is false where what is not found cannot be meant as new."""
        self.view, self.adding = view, adding
        self._found: dict[tuple[str, str], str | None] = {}
        self._tables: dict[str, dict[str, set[str]]] = {}
        self._searched = 0

    def taxon(self, text: str) -> str:
        """The taxon of an id, a scientific name, a label or a name that no other taxon shares."""
        found = self._exact("taxon", text, ("dwc:scientificName", "skos:prefLabel"))
        if found is None:
            found = self._by_name(text)
        return found or self._unknown("taxon", "taxon", text)

    def fishes(self, text: str) -> list[str]:
        """The taxon of a name, or the members of the group that is called so."""
        own = self._exact("taxon", text, ("dwc:scientificName", "skos:prefLabel"))
        words = unique((text.strip(), singular(text.strip())))
        found = (self.view.with_text(p, w, "group") for w in words for p in _GROUP)
        node = None if own else self.view.node(next(filter(None, found), [text])[0])
        return many(node, "skos:member") if node is not None else [own or self.taxon(text)]

    def character(self, text: str) -> str:
        """The character of an id or a label."""
        return self._exact("char", text, ("skos:prefLabel",)) or self._unknown("character", "char", text)

    def state(self, character: str, text: str) -> str:
        """The state of a character, by the last part of its id or by its label."""
        owner = character.partition(":")[2]
        direct = f"state:{owner}.{slug(text)}"
        if direct in self.view:
            return direct
        keys = self.view.ids("state", owner)
        self.view.fetch(keys)
        labels = {fold(one(n, "skos:prefLabel")): n.id for k in keys if (n := self.view.node(k)) is not None}
        if fold(text.strip()) in labels:
            return labels[fold(text.strip())]
        choices = [k.partition(".")[2] for k in keys]
        raise DataError(f"{text.strip()!r} is no state of {owner}", f"one of {', '.join(choices[:20])}")

    def source(self, text: str) -> str:
        """The source with this key."""
        key = f"src:{slug(text.strip().removeprefix('src:'))}"
        return key if key in self.view else self._unknown("source", "src", text)

    def place(self, text: str) -> str:
        """The place of an id, a code (US-OH) or a label."""
        return self._exact("place", text, ("skos:notation", "skos:prefLabel")) or self._unknown("place", "place", text)

    def _exact(self, prefix: str, text: str, predicates: tuple[str, ...]) -> str | None:
        if (prefix, text) not in self._found:
            self._found[prefix, text] = self._search(prefix, text, predicates)
        return self._found[prefix, text]

    def _search(self, prefix: str, text: str, predicates: tuple[str, ...]) -> str | None:
        words = text.strip()
        for key in (words, f"{prefix}:{words}", f"{prefix}:{slug(words)}"):
            if key.startswith(f"{prefix}:") and key in self.view:
                return key
        found = self._quickly(prefix, words, predicates) or self._table(prefix, predicates).get(fold(words), set())
        found = self._standing(found)
        if len(found) > 1:
            raise DataError(f"{words!r} may be {', '.join(sorted(found))}", "say which, by its id")
        return next(iter(found), None)

    def _standing(self, found: set[str]) -> set[str]:
        """Of several taxa called so, those that are not retired, if there are any."""
        nodes = [self.view.node(key) for key in found] if len(found) > 1 else []
        kept = {n.id for n in nodes if n is not None and one(n, "owl:deprecated") != "true"}
        return kept or found

    def _quickly(self, prefix: str, words: str, predicates: tuple[str, ...]) -> set[str]:
        """A search of the text of the base, cheaper than a table for the first few look-ups."""
        self._searched += 1
        if prefix in self._tables or self._searched > _FEW:
            return set()
        return {k for p in predicates for k in self.view.with_text(p, words, prefix)}

    def _table(self, prefix: str, predicates: tuple[str, ...]) -> dict[str, set[str]]:
        if prefix not in self._tables:
            table: dict[str, set[str]] = {}
            keys = self.view.ids(prefix)
            self.view.fetch(keys)
            for node in (n for n in map(self.view.node, keys) if n is not None):
                for predicate in predicates:
                    for value in many(node, predicate):
                        table.setdefault(fold(value), set()).add(node.id)
            self._tables[prefix] = table
        return self._tables[prefix]

    def _by_name(self, text: str) -> str | None:
        if "name" not in self._tables:
            table: dict[str, set[str]] = {}
            leading: dict[str, set[str]] = {}
            keys = self.view.ids("name")
            self.view.fetch(keys)
            for node in (n for n in map(self.view.node, keys) if n is not None):
                for named in (table, leading) if one(node, "tf:nameKind") in _LEADING else (table,):
                    named.setdefault(fold(one(node, "skosxl:literalForm")), set()).add(one(node, "tf:nameOf"))
            self._tables |= {"name": table, "leading name": leading}
        words = fold(text.strip())
        found = self._standing(self._tables["name"].get(words, set()))
        found = found & self._tables["leading name"].get(words, set()) or found
        if len(found) > 1:
            raise DataError(f"{text.strip()!r} is a name of several taxa: {', '.join(sorted(found))}",
                            "say which, by its id")
        return next(iter(found), None)

    def _unknown(self, what: str, prefix: str, text: str) -> str:
        near = [self._called(k) for k in self.candidates(prefix, text)]
        hint = f"did you mean {', '.join(near)}?" if near else f"add the {what} first"
        if not near and not self.adding:
            hint = f"the nearest names are {', '.join(self._nearest(prefix, text))}"
        raise DataError(f"there is no {what} {text.strip()!r}", hint)

    def candidates(self, prefix: str, text: str) -> list[str]:
        """Up to three ids whose id or words are near the text; suggestions for a person to accept."""
        words: dict[str, str] = {k.partition(":")[2]: k for k in self.view.ids(prefix)}
        for word, keys in self._tables.get(prefix, {}).items():
            words.setdefault(word, min(keys))
        close = difflib.get_close_matches(fold(text.strip()), sorted(words), n=3, cutoff=0.75)
        return list(dict.fromkeys(words[c] for c in close))

    def _called(self, key: str) -> str:
        node = self.view.node(key) if key.startswith("taxon:") else None
        return f"{one(node, 'skos:prefLabel')} ({key})" if node is not None else key

    def _nearest(self, prefix: str, text: str) -> list[str]:
        """The three names that are nearest to a text, however far, with the ids they stand for."""
        words = {w: min(keys) for name in (prefix, "name") for w, keys in self._tables.get(name, {}).items() if w}
        close = difflib.get_close_matches(fold(text.strip()), sorted(words), n=3, cutoff=0.0)
        return [f"{w} ({words[w]})" for w in close]
