"""The pages of the checks are those that the rules and samples make."""

from planner.checks.registry import all_rules
from tests.tools.check_pages import FOLDER, pages


def test_every_code_has_a_page():
    codes = {path.stem for path in FOLDER.glob("*.md")} - {"index"}
    assert codes == {rule.code for rule in all_rules()} | {"rule-crashed"}


def test_no_page_is_stale():
    """Where this fails, run `python -m tests.tools.check_pages`."""
    written = {path.name: path.read_text(encoding="utf-8") for path in FOLDER.glob("*.md")}
    assert written == pages()
