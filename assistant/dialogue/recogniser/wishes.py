"""Wishes that several rows of the recogniser table give way to (layer 4)."""

from __future__ import annotations

BESIDE_UNDO = (
    "handling|hook-left|hurt|back-in|contrast|describe|size|weight|habitat|range|rules|names|tackle|"
    "list|cooking|clean-ask|self-type|motor|asks-how|asks-what|asks-where|asks-when|back-alive"
)
"""Beside these a word of taking back only turns from what was said ("never mind, how big do they get")."""
BESIDE_ANOTHER = (
    "question|question-mark|asks-any|asks-can|asks-who|asks-name|what-it-is|compare-with|confirm|two-kinds|"
    "hybrid|quiz|key"
)
"""Beside these "another fish" is spoken of, not gone on to ("is a redear a different fish from a shellcracker")."""
BESIDE_QUIZ = (
    "start-over|another-fish|sources|help|undo|how-sure|key|list|hurt|rules|describe|looks|contrast|which-group|"
    "asks-how|asks-when|asks-where|what-is|noise|at-you|name-older|names"
)
"""Beside these a short line is no answer to the question of a quiz ("real question, sauger closed when")."""
