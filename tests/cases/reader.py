"""Rows of the tables of cases beside this file."""

from __future__ import annotations

from pathlib import Path

HERE = Path(__file__).parent


def rows(name: str) -> list[dict[str, str]]:
    """The rows of ``<name>.tsv`` as dictionaries; comment lines are left out."""
    lines = [x for x in (HERE / f"{name}.tsv").read_text(encoding="utf-8").split("\n") if x and not x.startswith("#")]
    head = lines[0].split("\t")
    return [dict(zip(head, line.split("\t"), strict=False)) for line in lines[1:]]
