"""The words of the sheet in one language, from the catalogue that is translated."""

import re
import tomllib
from functools import cache
from typing import Literal, get_args

from planner.data import data_dir
from planner.units import number

Language = Literal["en", "de"]
LANGUAGES: tuple[Language, ...] = get_args(Language)
# Values that are figures: those have the decimal sign of the language. A contact 1.2 keeps its own.
_FIGURES = frozenset(
    {"away", "bore", "gap", "length", "lengths", "mm", "ohm", "sleeves", "strands"}
)
_POINT = re.compile(r"(?<=\d)\.(?=\d)")


class Words:
    """Say things by key, such as `steps.solder`, with the values that the text asks for.

    Texts are in resources/words, a file a language with the same keys. `*` on both sides of a piece
    makes it bold on paper: what is acted on.
    """

    def __init__(self, language: Language = "en") -> None:
        self.language = language
        self._texts = _texts(language)

    def __call__(self, key: str, **values: object) -> str:
        """Return a text with its values; KeyError for a key or a value that is not there."""
        shown = {
            name: self.decimal(str(value)) if name in _FIGURES else value
            for name, value in values.items()
        }
        return self._texts[key].format_map(shown)

    def decimal(self, text: str) -> str:
        """Return figures with the decimal sign of the language."""
        return _POINT.sub(self._texts["page.decimal"], text)

    def number(self, value: float) -> str:
        """Print a number, with the decimal sign of the language."""
        return self.decimal(number(value))

    def counted(self, key: str, count: int, **values: object) -> str:
        """Return the text for a number of things: `key` with `_one` for one, else with `_many`."""
        form = "one" if count == 1 else "many"
        return self(f"{key}_{form}", count=count, **values)

    def __contains__(self, key: str) -> bool:
        return key in self._texts


@cache
def _texts(language: Language) -> dict[str, str]:
    """Return the texts of a language by dotted key."""
    path = data_dir("resources") / "words" / f"{language}.toml"
    sections = tomllib.loads(path.read_text(encoding="utf-8"))
    return {
        f"{section}.{key}": text
        for section, texts in sections.items()
        for key, text in texts.items()
    }
