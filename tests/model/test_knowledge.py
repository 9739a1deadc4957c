"""The knowledge base gives records of the class that their kind stands for."""

from __future__ import annotations

from typing import get_args, get_overloads, get_type_hints

from assistant.model import regulations
from assistant.model.knowledge import KnowledgeBase
from assistant.model.schema import BY_NAME


def test_what_find_and_all_promise_is_what_the_table_of_kinds_says() -> None:
    """Each kind that is named in an overload gives its own record; no kind that is found by its id is left out."""
    names = {"Obligation": regulations.Obligation}
    told: dict[str, set[type]] = {}
    for function in (KnowledgeBase.find, KnowledgeBase.all):
        for one in get_overloads(function):
            hints = get_type_hints(one, localns=names)
            for kind in get_args(hints["kind"]):
                told.setdefault(kind, set()).add(get_args(hints["return"])[0])
    for name, records in told.items():
        record = BY_NAME[name].record
        assert records == {names[record] if isinstance(record, str) else record}, name
    assert {k.name for k in BY_NAME.values() if not k.by and k.prefix != "rule"} == set(told)
