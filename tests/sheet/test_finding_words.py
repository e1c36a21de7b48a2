"""Every finding has words in each language, and the figures of the rule are never lost."""

import tomllib

import pytest

from planner.checks.registry import all_rules
from planner.data import data_dir
from planner.sheet.finding_words import stop_lines, told
from planner.sheet.words import LANGUAGES, Words
from tests.sheet.plain_plan import CAUTION, STOP


@pytest.mark.parametrize("language", LANGUAGES[1:])
def test_every_rule_has_words_in_the_other_language(language):
    path = data_dir("resources") / "words" / f"findings-{language}.toml"
    texts = tomllib.loads(path.read_text(encoding="utf-8"))
    assert sorted(texts) == sorted([*(rule.code for rule in all_rules()), "rule-crashed"])
    for text in texts.values():
        assert sorted(text) == ["mend", "title", "why"]
        assert all(line.strip() == line and line for line in text.values())


def test_english_says_the_rule_s_own_words():
    assert stop_lines(Words(), STOP) == (
        ("bridge, end A", True),
        ("T and R meet.", False),
        ("Why: They short.", False),
        ("Mend: Part them.", True),
    )


def test_another_language_quotes_the_rule_after_its_own_words():
    said = told(Words("de"), CAUTION)
    assert said.headline == "gap-small, Ende A"
    assert said.what[0] == "Kleiner Abstand: A."
    assert CAUTION.what in said.what[1]
    assert said.mend.startswith("Eine Lötstelle")
