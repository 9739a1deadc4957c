"""The errors Tellfin raises on purpose (leaf module: imports nothing of ours).

Each carries what is wrong (``message``), what to do next (``hint``) and where (``where``: file:line or the
user's own words), so that every face can show it in one or two lines.
"""

from __future__ import annotations


class AssistantError(Exception):
    """A fault that a person can act on; ``exit_code`` is the documented process exit code."""

    exit_code = 3

    def __init__(self, message: str, hint: str = "", where: str = "") -> None:
        super().__init__(message)
        self.message = message
        self.hint = hint
        self.where = where

    def __str__(self) -> str:
        place = f"{self.where}: " if self.where else ""
        return f"{place}{self.message}" + (f" ({self.hint})" if self.hint else "")


class DataError(AssistantError):
    """The base, a sheet or a patch is at fault (exit code 1)."""

    exit_code = 1


class MissingRecord(DataError, KeyError):
    """A record that others point to does not stand in the base, as where a file of it was deleted or emptied."""

    def __init__(self, kind: str, key: str) -> None:
        super().__init__(f"the base is damaged: it holds no {kind} {key!r}, which other records name",
                         "run tellfin check on it; a file may be missing, empty or unreadable")

    __str__ = AssistantError.__str__


class UsageError(AssistantError):
    """The command, its options or its input were used wrongly (exit code 2)."""

    exit_code = 2


class ToolError(AssistantError):
    """Tellfin itself, the disk or a server failed (exit code 3)."""

    exit_code = 3
