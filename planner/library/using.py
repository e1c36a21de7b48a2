"""Which plans use a definition: plans are looked through for the ids that they name."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from planner.files.envelope import kind_of
from planner.files.syntax import read_json
from planner.model.definition import SHELVES, DefinitionKind
from planner.problem import InputError, Problem

MOST_PLANS = 2_000


@dataclass(frozen=True, slots=True)
class PlanUse:
    """A plan that carries a copy of a definition, and the copy's revision."""

    path: Path
    title: str
    revision: int


class Uses:
    """The uses of all definitions in some plans, as they were when it was made."""

    def __init__(self, plans: Iterable[Path]) -> None:
        """Look through plans, and through the folders among them; other files are passed over."""
        self.problems: list[Problem] = []
        self._uses: dict[tuple[DefinitionKind, str], list[PlanUse]] = {}
        self.plans = 0
        for path in self._files(plans):
            self._look_into(path)

    def of(self, kind: DefinitionKind, record_id: str) -> tuple[PlanUse, ...]:
        """Return the plans that use a definition, by path."""
        return tuple(sorted(self._uses.get((kind, record_id), ()), key=lambda it: it.path))

    def _files(self, plans: Iterable[Path]) -> Iterator[Path]:
        seen: set[Path] = set()
        for given in plans:
            for path in sorted(given.glob("*.json")) if given.is_dir() else (given,):
                if path.resolve() in seen:
                    continue
                if len(seen) >= MOST_PLANS:
                    what = f"there are more than {MOST_PLANS} plans; the rest is not looked at"
                    self.problems.append(Problem(what, str(given), "Name fewer folders."))
                    return
                seen.add(path.resolve())
                yield path

    def _look_into(self, path: Path) -> None:
        try:
            values = read_json(path)
            if kind_of(values, path) != "plan":
                return
        except InputError as error:
            self.problems.extend(error.problems)
            return
        self.plans += 1
        for kind, copy in _copies(values):
            use = PlanUse(path, str(values.get("title", "")), _revision(copy))
            self._uses.setdefault((kind, str(copy.get("id", ""))), []).append(use)


def _copies(values: dict[str, Any]) -> Iterator[tuple[DefinitionKind, dict[str, Any]]]:
    """Yield what a plan carries: it prunes what nothing in it uses, so each copy is a use."""
    held = values.get("definitions")
    if not isinstance(held, dict):
        return
    for kind, shelf in SHELVES.items():
        copies = held.get(shelf, ())
        for copy in copies if isinstance(copies, tuple) else ():
            if isinstance(copy, dict):
                yield kind, copy


def _revision(copy: dict[str, Any]) -> int:
    revision = copy.get("revision", 1)
    return revision if isinstance(revision, int) else 1
