"""Findings as a table of 80 columns, and as the JSON object that machines read."""

import textwrap
from collections.abc import Iterator, Sequence

from planner.checks.acceptance import acceptance_of
from planner.checks.finding import WEIGHTS, Finding
from planner.cli.output import WIDTH
from planner.model.place import Place
from planner.model.plan import Plan
from planner.services.checking import verdict

_LEFT = 31
_CLOSING = {
    "stop": "NOT CLEAR TO SOLDER: mend every stop first.",
    "caution": "No stop. Mend each caution, or accept it with a reason.",
    "clear": "Clear to solder.",
}


def findings_values(path: str, findings: Sequence[Finding]) -> dict[str, object]:
    """Return the object of the contract: plan, verdict, findings."""
    found = [
        {
            "code": finding.code,
            "weight": finding.weight,
            "what": finding.what,
            "why": finding.why,
            "mend": finding.mend,
            "where": [place.as_dict() for place in finding.where],
        }
        for finding in findings
    ]
    return {"plan": path, "verdict": verdict(findings), "findings": found}


def findings_table(path: str, plan: Plan, findings: Sequence[Finding]) -> str:
    """Return a head line, the findings, and a closing line, none wider than 80 columns."""
    lines = [*_wrapped("", plan.title or path)]
    for finding in findings:
        lines += ["", *_finding_lines(plan, finding)]
    lines += ["", f"{_counts(findings)}. {_CLOSING[verdict(findings)]}"]
    return "\n".join(lines)


def _finding_lines(plan: Plan, finding: Finding) -> Iterator[str]:
    head = f"{finding.weight:<8} {finding.code:<21} "
    yield from _wrapped(head, finding.what)
    indent = " " * _LEFT
    if finding.where:
        yield from _wrapped(f"{indent}at ", "; ".join(map(_place_text, finding.where)))
    yield from _wrapped(f"{indent}why ", finding.why)
    yield from _wrapped(f"{indent}mend ", finding.mend)
    acceptance = acceptance_of(plan, finding)
    if acceptance:
        by = f" ({acceptance.by})" if acceptance.by else ""
        yield from _wrapped(f"{indent}accepted ", f"{acceptance.reason}{by}")


def _wrapped(head: str, text: str) -> list[str]:
    hanging = " " * _LEFT if head else ""
    return textwrap.wrap(
        text, WIDTH, initial_indent=head, subsequent_indent=hanging, break_long_words=True
    )


def _place_text(place: Place) -> str:
    contact = f"contact {place.contact}" if place.contact else ""
    inner = ", ".join(filter(None, (contact, place.conductor, place.part)))
    return ": ".join(filter(None, (place.end, inner)))


def _counts(findings: Sequence[Finding]) -> str:
    if not findings:
        return "No findings"
    counts = [(sum(f.weight == weight for f in findings), weight) for weight in WEIGHTS]
    return ", ".join(f"{n} {weight}{'s' * (n != 1)}" for n, weight in counts if n)
