"""The catalogues of words: the same keys and values in every language, none without a use."""

import ast
import re
import tomllib
from functools import cache
from pathlib import Path

import pytest

import planner
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


def pattern(node):
    """Return a text of the code as a pattern: what is put into it may be any word."""
    if isinstance(node, ast.Constant):
        return re.escape(node.value) if isinstance(node.value, str) else ""
    parts = (
        re.escape(part.value) if isinstance(part, ast.Constant) else r"[\w-]+"
        for part in node.values
    )
    return "".join(parts)


@cache
def spoken():
    """Return a pattern for all texts in the code that may be keys."""
    found = set()
    sections = {key.split(".")[0] for key in texts("en")}
    for path in Path(planner.__file__).parent.rglob("*.py"):
        code = path.read_text(encoding="utf-8")
        if not any(f'"{section}.' in code for section in sections):
            continue
        for node in ast.walk(ast.parse(code)):
            if isinstance(node, ast.Constant | ast.JoinedStr):
                text = pattern(node)
                if re.match(r"[a-z_]+\\\.[\w\[]", text):
                    found.add(text)
    return re.compile("|".join(f"(?:{text})(?:_one|_many)?" for text in sorted(found)))


def test_every_text_is_used():
    assert [key for key in texts("en") if not spoken().fullmatch(key)] == []


def test_a_text_that_nothing_says_would_be_found():
    assert not spoken().fullmatch("page.no_such_text")
    assert spoken().fullmatch("page.order")


def test_figures_have_the_decimal_sign_of_the_language_and_names_keep_theirs():
    said = Words("de")("steps.square", mm="2.5")
    assert "2,5" in said
    assert Words("de").number(12.75) == "12,75"
    assert Words("en").number(12.75) == "12.75"
    assert "4.4" in Words("de")("cuts.plug", where="A", title="4.4 five-pole")
    assert "1.2" in Words("de")("end.stands", contact="1.2", where="unten")


def test_one_and_many_have_their_own_texts():
    words = Words()
    assert words.counted("page.stops", 1) == "1 stop"
    assert words.counted("page.stops", 3) == "3 stops"
