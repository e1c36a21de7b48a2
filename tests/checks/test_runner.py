"""The runner and the registry: one rule's crash hides nothing, a broken rule file is an error."""

import sys

import pytest

from planner.checks import registry
from planner.checks.context import Context
from planner.checks.registry import Found, Rule, RuleError, all_rules, load_rules, rule
from planner.checks.runner import run
from planner.model.place import Place
from planner.wiring.graph import Wiring
from tests.building import PHONES, PHONES_IN, lead

PLAN = lead({"A": PHONES, "B": PHONES_IN}, ("RD A.T B.T", "GN A.R B.R", "WH A.S B.S"))
CONTEXT = Context(PLAN, Wiring(PLAN))


def crash_after_one(context):
    yield Found("First.", "Mend it.", (Place(end="A"),))
    raise KeyError("tip")


def find_b(context):
    yield Found("At B.", "Mend it.", (Place(end="B"),), weight="stop")


CRASHING = Rule("crashing", "Crashing", "Why.", "caution", crash_after_one)
OTHER = Rule("other", "Other", "Why.", "note", find_b)


def test_a_crash_is_named_and_hides_nothing():
    codes = [(each.code, each.weight) for each in run(CONTEXT, (CRASHING, OTHER))]
    assert codes == [("other", "stop"), ("crashing", "caution"), ("rule-crashed", "caution")]


def test_a_crash_says_which_rule_and_why():
    crash = run(CONTEXT, (CRASHING,))[-1]
    assert crash.what == "The check 'crashing' stopped short: KeyError: 'tip'."


def test_the_rules_own_words_fill_in():
    (finding,) = run(CONTEXT, (OTHER,))
    assert (finding.title, finding.why, finding.mend) == ("Other", "Why.", "Mend it.")


def test_findings_are_sorted_by_weight_code_place():
    found = run(CONTEXT, (OTHER, CRASHING, OTHER))
    assert list(found) == sorted(found, key=lambda each: each.sort_key)


@pytest.fixture
def rule_folder(tmp_path, monkeypatch):
    """A package of rule files that tests write; the registry is as before afterwards."""
    folder = tmp_path / "somerules"
    folder.mkdir()
    (folder / "__init__.py").write_text("")
    monkeypatch.syspath_prepend(tmp_path)
    monkeypatch.setattr(registry, "_RULES", dict(registry._RULES))
    yield folder
    for name in [name for name in sys.modules if name.startswith("somerules")]:
        del sys.modules[name]


def test_a_rule_file_that_does_not_import_is_an_error(rule_folder):
    (rule_folder / "broken.py").write_text("import nothing_of_that_name\n")
    with pytest.raises(RuleError, match=r"somerules\.broken does not import"):
        load_rules("somerules", [str(rule_folder)])


def test_a_rule_is_found_by_its_file(rule_folder):
    text = (
        "from planner.checks.registry import rule\n"
        "@rule(code='brand-new', title='New', why='Why.', weight='note')\n"
        "def new(context):\n    yield from ()\n"
    )
    (rule_folder / "brand_new.py").write_text(text)
    load_rules("somerules", [str(rule_folder)])
    assert registry._RULES["brand-new"].weight == "note"


def test_a_code_is_claimed_once(monkeypatch):
    all_rules()
    monkeypatch.setattr(registry, "_RULES", dict(registry._RULES))
    with pytest.raises(RuleError, match="both claim 'open'"):
        rule(code="open", title="Open", why="Why.", weight="stop")(find_b)


def test_rule_files_do_not_import_one_another():
    for each in all_rules():
        names = vars(sys.modules[each.search.__module__]).values()
        sources = {getattr(value, "__module__", "") or "" for value in names}
        others = {name for name in sources if name.startswith("planner.checks.rules.")}
        assert others <= {each.search.__module__}
