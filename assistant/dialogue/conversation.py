"""What a conversation holds between turns; replaced, never changed in place (layer 4)."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, NamedTuple

from assistant.dialogue.answer import Answer, Asked
from assistant.dialogue.reader.reading import Measure, Seen
from assistant.reasoning.evidence import ANY, Scope
from assistant.reasoning.observed import Hint

if TYPE_CHECKING:
    from assistant.dialogue.handlers.quiz import QuizRun
    from assistant.dialogue.lessons.key_walk import KeyWalk
    from assistant.dialogue.rules.context import Spoken


class Order(NamedTuple):
    """The character that fishes are put in the order of, whether the least comes first, its words in the line, and
    whether it has more and less at all.
    """

    character: str
    least_first: bool
    words: tuple[str, ...] = ()
    able: bool = True


class Wanted(NamedTuple):
    """What was asked of a fish: characters, the states asked for by yes or no, and of which fish of its kind."""

    characters: tuple[str, ...] = ()
    states: tuple[str, ...] = ()
    who: Scope = ANY


class Held(NamedTuple):
    """Everything carried over: the fish spoken of, what was seen, where, when, how big, and what was asked back."""

    taxa: tuple[str, ...] = ()
    shown: tuple[str, ...] = ()
    wider: tuple[str, ...] = ()
    character: str = ""
    order: Order | None = None
    """What the last list was put in the order of."""
    wanted: Wanted = Wanted()
    """What was asked of the fish that was described last."""
    seen: tuple[Seen, ...] = ()
    hints: tuple[Hint, ...] = ()
    skipped: frozenset[str] = frozenset()
    places: tuple[str, ...] = ()
    water: str | None = None
    date: str | None = None
    season: str = ""
    lengths: tuple[Measure, ...] = ()
    weights: tuple[Measure, ...] = ()
    sex: str = ""
    stage: str = ""
    breeding: str = ""
    size_word: str = ""
    dead: bool = False
    units: str = ""
    units_wished: bool = False
    """True when the units were asked for, so that a measure typed in others does not change them."""
    intent: str = ""
    asked: Asked | None = None
    last: Answer | None = None
    catch: Spoken | None = None
    """The catch being judged under the rules (kept fish, date, place), as the rules handler left it."""
    walk: KeyWalk | QuizRun | None = None
    """The state of a key being walked or a quiz being taken, as its handler left it."""
    noted: frozenset[str] = frozenset()
    """Standing notices and remarks on rules that were said in full already."""
    before: Held | None = None
    """The conversation one turn earlier, for taking a turn back."""

    def after(self, **changes: Any) -> Held:
        """The same conversation with some things changed."""
        return self._replace(**changes)
