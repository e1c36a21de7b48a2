"""The catalogues of words: the same keys and values in every language."""

import re
import tomllib

import pytest

from planner.data import data_dir
from planner.sheet.words import LANGUAGES, Words


def texts(language):
    path = data_dir("resources") / "words" / f"{language}.toml"
    sections = tomllib.loads(path.read_text(encoding="utf-8"))
    return {f"{one}.{key}": text for one, pairs in sections.items() for key, text in pairs.items()}


def values_of(text):
    return set(re.findall(r"\{(\w*)", text))


@pytest.mark.parametrize("language", LANGUAGES[1:])
def test_a_language_has_every_key_with_the_same_values(language):
    english = {key: values_of(text) for key, text in texts("en").items()}
    assert {key: values_of(text) for key, text in texts(language).items()} == english


@pytest.mark.parametrize("language", LANGUAGES)
def test_bold_begins_and_ends(language):
    assert [key for key, text in texts(language).items() if text.count("*") % 2] == []


def test_a_text_takes_its_values():
    assert Words("de")("page.solder_side") == "LÖTSEITE"
    with pytest.raises(KeyError):
        Words()("page.no_such_text")
