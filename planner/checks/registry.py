"""The registry of rules: one file a rule in planner/checks/rules, found by being there.

A rule file holds a generator of `Found` under the decorator `rule`:

    @rule(code="open", title="Open", why="No sound.", weight="stop")
    def missing(context: Context) -> Iterator[Found]:
        yield Found("L+ does not reach B", "Land it.", (Place(end="B"),))
"""

import pkgutil
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import cache
from importlib import import_module

from planner.checks import rules
from planner.checks.context import Context
from planner.checks.finding import Finding, Remedy, Weight
from planner.model.place import Place


@dataclass(frozen=True, slots=True)
class Found:
    """What a rule found; what it leaves empty (title, why, weight) is the rule's own."""

    what: str
    mend: str
    where: tuple[Place, ...] = ()
    title: str = ""
    why: str = ""
    weight: Weight | None = None
    remedy: Remedy | None = None
    unfinished: bool = False


Search = Callable[[Context], Iterator[Found]]


@dataclass(frozen=True, slots=True)
class Rule:
    """One rule: its frozen code, its words, its weight, and the search."""

    code: str
    title: str
    why: str
    weight: Weight
    search: Search

    def findings(self, context: Context) -> Iterator[Finding]:
        """Run the rule."""
        for found in self.search(context):
            yield Finding(
                code=self.code,
                weight=found.weight or self.weight,
                what=found.what,
                why=found.why or self.why,
                mend=found.mend,
                where=found.where,
                title=found.title or self.title,
                remedy=found.remedy,
                unfinished=found.unfinished,
            )


class RuleError(Exception):
    """A rule file that cannot be used; names the file."""


_RULES: dict[str, Rule] = {}


def rule(*, code: str, title: str, why: str, weight: Weight) -> Callable[[Search], Search]:
    """Register a generator of findings as the rule `code`; RuleError if the code is taken."""

    def register(search: Search) -> Search:
        taken = _RULES.get(code)
        if taken is not None and taken.search.__module__ != search.__module__:
            msg = f"{search.__module__} and {taken.search.__module__} both claim {code!r}"
            raise RuleError(msg)
        _RULES[code] = Rule(code, title, why, weight, search)
        return search

    return register


def load_rules(package: str, folders: list[str]) -> None:
    """Import every rule file of a package; RuleError names a file that does not import."""
    for module in pkgutil.iter_modules(folders):
        name = f"{package}.{module.name}"
        try:
            import_module(name)
        except RuleError:
            raise
        except Exception as error:
            msg = f"the rule file {name} does not import: {error}"
            raise RuleError(msg) from error


@cache
def all_rules() -> tuple[Rule, ...]:
    """Return every rule, in the order of their codes; RuleError if one does not import."""
    load_rules(rules.__name__, list(rules.__path__))
    return tuple(_RULES[code] for code in sorted(_RULES))
