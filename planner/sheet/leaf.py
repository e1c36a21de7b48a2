"""A page of the sheet before head, way bar and foot are put on it, and what all pages draw from."""

from dataclasses import dataclass
from functools import cached_property

from planner.checks.finding import Finding
from planner.drawing.primitives import DrawList
from planner.dryfit.cutting import Batch, CutList, batch, cut_list
from planner.dryfit.threading import Threading, thread
from planner.dryfit.work import steps
from planner.dryfit.work.step import Step
from planner.model.plan import Plan
from planner.sheet.facts import EndFacts, end_facts
from planner.sheet.paper import PAPERS, Paper, PaperName
from planner.sheet.words import Language, Words
from planner.wiring.graph import Wiring


@dataclass(frozen=True, slots=True)
class Leaf:
    """One page's body, in 0.01 mm of the page, between the way bar and the foot.

    `tab` is the white-on-black word (LEAD, END A); `stage` says which part of the way bar is dark:
    `cut`, the id of an end or a split, `prove`, or nothing; `also` is a split that is closed
    on the page of an end.
    """

    tab: str
    title: str
    subtitle: str
    stage: str
    body: DrawList
    also: str = ""


@dataclass(frozen=True)
class Making:
    """What the pages of one sheet are made from; what is derived is worked out once."""

    plan: Plan
    findings: tuple[Finding, ...]
    paper_name: PaperName = "a4"
    date: str = ""
    language: Language = "en"
    leads: int = 1

    @cached_property
    def words(self) -> Words:
        """The words of the sheet."""
        return Words(self.language)

    @cached_property
    def paper(self) -> Paper:
        """Sizes of the page."""
        return PAPERS[self.paper_name]

    @cached_property
    def wiring(self) -> Wiring:
        """The wiring of the plan."""
        return Wiring(self.plan)

    @cached_property
    def facts(self) -> tuple[EndFacts, ...]:
        """What is said about each end, in the plan's order."""
        return end_facts(self.plan, self.words)

    @cached_property
    def cuts(self) -> CutList:
        """What to cut and pick for one lead."""
        return cut_list(self.plan)

    @cached_property
    def batch(self) -> Batch:
        """The totals and the order of the whole run."""
        return batch(self.plan, self.leads)

    @cached_property
    def threading(self) -> Threading:
        """In which order the parts go on the cable."""
        return thread(self.plan)

    @cached_property
    def steps(self) -> tuple[Step, ...]:
        """The order of work; the first step is number 1."""
        return steps(self.plan, self.wiring)

    @cached_property
    def stopped(self) -> bool:
        """Whether the plan must not be soldered from."""
        return any(finding.weight == "stop" for finding in self.findings)
