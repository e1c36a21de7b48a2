"""Sample plans for the rules: bad ones, which a rule finds, and good ones, which are clean.

A file tests/checks/samples_<room>.py holds functions under `bad(code)` or `good(code)`, each with a
docstring that the documentation prints. One returns a plan, or a plan and the known pinout records.
"""

from dataclasses import dataclass
from importlib import import_module
from pathlib import Path

from planner.model.plan import Plan
from planner.services.checking import check_plan


@dataclass(frozen=True)
class Sample:
    """One sample plan."""

    code: str
    is_bad: bool
    name: str
    text: str
    plan: Plan
    known: tuple

    @property
    def findings(self):
        return check_plan(self.plan, self.known)


_SAMPLES = []


def bad(code):
    """Register a function that builds a plan which must give exactly this finding."""
    return _register(code, is_bad=True)


def good(code):
    """Register a function that builds a plan which must not give this finding, nor another."""
    return _register(code, is_bad=False)


def _register(code, *, is_bad):
    def keep(build):
        built = build()
        plan, known = built if isinstance(built, tuple) else (built, ())
        name = build.__name__.replace("_", " ")
        _SAMPLES.append(Sample(code, is_bad, name, build.__doc__.strip(), plan, tuple(known)))
        return build

    return keep


def all_samples():
    """Return the samples of every samples_*.py, in order of code, bad ones first."""
    for file in sorted(Path(__file__).parent.glob("samples_*.py")):
        import_module(f"tests.checks.{file.stem}")
    return sorted(_SAMPLES, key=lambda each: (each.code, not each.is_bad))
