"""What `cupwright connectors newer` and `used` do: definitions seen from plans that use them."""

from argparse import Namespace
from collections.abc import Iterator, Sequence

from planner.checks.finding import Finding
from planner.cli.definitions_acts import named
from planner.cli.definitions_text import hung, three_columns
from planner.cli.output import complain, say, say_json
from planner.library.loading import load_library
from planner.library.using import PlanUse, Uses
from planner.model.definition import kind_name
from planner.services.library import Meaning, Newer, meaning, newer
from planner.services.opening import open_plan, save_plan


def find_newer(args: Namespace) -> int:
    """Say what the collection has newer than a plan, and what it means; --write takes it."""
    plan, library = open_plan(args.path), load_library(args.folder)
    found = newer(plan, library)
    told = meaning(plan, [each.known for each in found], library)
    if args.write and found:
        save_plan(args.path, told.plan)
    if args.json:
        say_json(_newer_values(found, told))
    elif not found:
        say("The plan carries what the collection has.")
    else:
        closing = f"{args.path} has them now." if args.write else "Take them with --write."
        say("\n".join([*_newer_lines(found), *_meaning_lines(told), "", closing]))
    return 0


def find_used(args: Namespace) -> int:
    """List the plans that use a definition."""
    record = named(load_library(args.folder), args.id)
    uses = Uses(args.paths)
    found = uses.of(kind_name(record), record.id)
    if args.json:
        say_json([_use_values(it) for it in found])
    else:
        rows = [hung(f"revision {it.revision:<3} ", str(it.path)) for it in found]
        lines = [line for lines in rows for line in lines]
        say("\n".join([*lines, f"{len(found)} of {uses.plans} plans use {record.id}."]))
    complain(uses.problems)
    return 0


def _use_values(use: PlanUse) -> dict[str, object]:
    return {"path": str(use.path), "title": use.title, "revision": use.revision}


def _newer_lines(found: Sequence[Newer]) -> Iterator[str]:
    for each in found:
        own, known = each.carried.revision, each.known.revision
        yield from hung("", f"{each.known.id}: the plan has revision {own}, the collection {known}")
        rows = [("", "plan", "collection")]
        rows += [(it.key, it.first, it.second) for it in each.changes]
        for cells in rows if each.changes else ():
            yield from three_columns(cells)
        yield ""


def _meaning_lines(told: Meaning) -> Iterator[str]:
    if told.harmless and not told.cured:
        yield "No landing and no finding is touched by that."
    for text in (*told.lost, *told.moved):
        yield from hung("", text)
    for head, findings in (("comes up", told.appeared), ("is gone", told.cured)):
        for it in findings:
            yield from hung(f"{head:<9} {it.weight:<8} ", it.what)


def _newer_values(found: Sequence[Newer], told: Meaning) -> dict[str, object]:
    return {
        "newer": [
            {
                "kind": kind_name(each.known),
                "id": each.known.id,
                "plan": each.carried.revision,
                "collection": each.known.revision,
                "differences": [
                    {"key": it.key, "plan": it.first, "collection": it.second}
                    for it in each.changes
                ],
            }
            for each in found
        ],
        "lost": list(told.lost),
        "moved": list(told.moved),
        "appeared": [_finding_value(it) for it in told.appeared],
        "cured": [_finding_value(it) for it in told.cured],
    }


def _finding_value(finding: Finding) -> dict[str, str]:
    return {"code": finding.code, "weight": finding.weight, "what": finding.what}
