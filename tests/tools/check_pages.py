"""Write docs/checks, one page a code, from the rules and their samples.

Run `python -m tests.tools.check_pages` after a rule or a sample has changed.
"""

from pathlib import Path

from planner.checks.registry import all_rules
from planner.checks.wording import Words
from planner.model.signals import signals_text
from planner.wiring.graph import Wiring
from tests.checks.samples import all_samples

FOLDER = Path(__file__).resolve().parents[2] / "docs" / "checks"
WEIGHT_WORDS = {
    "stop": "**stop**: do not heat the iron",
    "caution": "**caution**: look, then mend it or accept it with a reason",
    "note": "**note**: nothing is wrong if it is meant",
}
CRASHED = (
    "rule-crashed",
    "A check did not run",
    "caution",
    "What that check looks for has not been looked for, so the plan may hide it. The other checks "
    "have run. Look over that point by hand, and report the fault with the plan.",
)


def pages():
    """Return the text of every page by file name."""
    rows = sorted(
        [(rule.code, rule.title, rule.weight, rule.why) for rule in all_rules()] + [CRASHED]
    )
    found = {f"{row[0]}.md": _page(*row) for row in rows}
    return {"index.md": _index(rows)} | found


def _index(rows):
    lines = [f"| [{code}]({code}.md) | {weight} | {title} |" for code, title, weight, _ in rows]
    head = (
        "# What is checked\n\nEvery code is frozen once shipped; the wording is free. Some rules "
        "give a finding more or less weight than their own; it is said in the finding.\n\n"
        "| code | weight | title |\n|---|---|---|\n"
    )
    return head + "\n".join(lines) + "\n"


def _page(code, title, weight, why):
    parts = [f"# {code}\n\n{title}. Weight: {WEIGHT_WORDS[weight]}.\n\n{why}\n"]
    parts += [_sample(sample) for sample in all_samples() if sample.code == code]
    return "\n".join(parts)


def _sample(sample):
    head = f"## {'Bad' if sample.is_bad else 'Good'}: {sample.name}\n\n{sample.text}\n"
    told = [each for each in sample.findings if sample.is_bad and each.code == sample.code]
    findings = [f"- {each.weight}: {each.what} *{each.mend}*" for each in told]
    return "\n".join([head, *_ends(sample.plan), *_joints(sample.plan), *findings, ""])


def _ends(plan):
    rows = [_end(plan, end) for end in plan.ends]
    return ["| end | plug | drive | signals |", "|---|---|---|---|", *rows, ""] if rows else []


def _end(plan, end):
    wiring, connector = Wiring(plan), plan.connector_of(end.id)
    words = Words(wiring)
    carried = [
        f"{words.contact(end.id, contact)} {signals_text(signals)}"
        for (at, contact), signals in wiring.signals.items()
        if at == end.id
    ]
    record = plan.pinout_of(end.id)
    cells = [
        end.id,
        connector.title if connector else "-",
        record.drive if record else "-",
        ", ".join(carried) or "-",
    ]
    return f"| {' | '.join(cells)} |"


def _joints(plan):
    words = Words(Wiring(plan))
    rows = []
    for conductor in plan.conductors:
        on = [
            words.spot(each.end, each.contact)
            for each in plan.landings
            if each.conductor == conductor.id
        ]
        capped = [f"{each.end} capped" for each in plan.caps if each.conductor == conductor.id]
        kind = "shield" if conductor.kind == "shield" else words.conductor(conductor.id)
        rows.append(f"| {kind} | {', '.join(on + capped) or 'nowhere'} |")
    rows += [
        f"| link | {', '.join(words.spot(each.end, contact) for contact in each.contacts)} |"
        for each in plan.links
    ]
    return ["| core | lands on |", "|---|---|", *rows, ""] if rows else []


def main():
    """Write every page, and take away those of codes that are no more."""
    FOLDER.mkdir(parents=True, exist_ok=True)
    fresh = pages()
    for stale in {path.name for path in FOLDER.glob("*.md")} - fresh.keys():
        (FOLDER / stale).unlink()
    for name, text in fresh.items():
        (FOLDER / name).write_text(text, encoding="utf-8")


if __name__ == "__main__":
    main()
