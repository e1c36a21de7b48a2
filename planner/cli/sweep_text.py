"""The expected sweep and the probe plan as text of 80 columns."""

import textwrap
from collections.abc import Iterator, Sequence

from planner.cli.output import WIDTH
from planner.proving.expected import Path, Sweep
from planner.proving.limits import APART, RULES, SHORT_LEADS
from planner.proving.methods import METHOD_WORDS
from planner.proving.nearness import BY_THE_SHELL
from planner.proving.probing import ORDER, IsolationPlan, Probe
from planner.proving.reading import Contact
from planner.services.sweeping import Swept
from planner.units import number

_STOPPED = "THE PLAN HAS A STOP: a lead built from it is not good, whatever a meter shows."


def sweep_text(path: str, swept: Swept, *, stopped: bool) -> str:
    """Return what is joined and by how many ohm, and the probe plan, at most 80 columns wide."""
    probes, sweep = swept.probes, swept.sweep
    lines = [*_wrapped(swept.plan.title or path), "", *_wrapped(_loud(probes.caution))]
    if stopped:
        lines += _wrapped(_STOPPED)
    if not sweep.contacts:
        return "\n".join([*lines, "", "There is no contact yet: choose the connectors."])
    lines += ["", *_sweep_lines(sweep), "", *_limit_lines(sweep)]
    lines += ["", f"1 Continuity: {_readings(len(probes.continuity))}, as above from top to bottom"]
    lines += _bullets("does not show", probes.unseen)
    lines += ["", *_isolation_lines(probes.isolation, swept.methods)]
    if any(it.mating == "concentric" for it in swept.plan.definitions.connectors):
        lines += ["", *_wrapped(BY_THE_SHELL)]
    return "\n".join(lines)


def _loud(caution: str) -> str:
    """Return a caution with what to do in capitals; the reason follows as it is."""
    act, colon, reason = caution.partition(":")
    return f"{act.upper()}{colon}{reason}"


def _wrapped(text: str, head: str = "", rest: str | None = None) -> list[str]:
    hanging = " " * len(head) if rest is None else rest
    return textwrap.wrap(text, WIDTH, initial_indent=head, subsequent_indent=hanging)


def _bullets(head: str, texts: Sequence[str]) -> Iterator[str]:
    yield f"  {head}:"
    for text in texts:
        yield from _wrapped(text, "  - ")


def _readings(count: int) -> str:
    return f"{count} reading{'s' * (count != 1)}"


def _name(contact: Contact) -> str:
    return f"{contact[0]}.{contact[1]}"


def _sweep_lines(sweep: Sweep) -> Iterator[str]:
    width = max(len(_name(it)) for it in sweep.contacts) + 3
    yield f"{'hold':<{width}}{'joined to':<{width + 6}}{'expect ohm':>12}{'not above':>12}"
    for net in sweep.nets:
        if len(net) == 1:
            yield f"{_name(net[0]):<{width}}nothing"
        for other in net[1:]:
            path = sweep.path(net[0], other)
            yield f"{_name(net[0]):<{width}}{_name(other):<{width + 6}}{_figures(path)}"
    yield "Nothing else is joined, within an end or from end to end."


def _figures(path: Path) -> str:
    expect = "not known" if path.ohm is None else f"{'about ' * path.estimated}{path.ohm:.3f}"
    return f"{expect:>12}{path.limit_ohm:>12.2f}"


def _limit_lines(sweep: Sweep) -> Iterator[str]:
    for rule in dict.fromkeys(path.rule for path in sweep.paths):
        yield from _wrapped(f"{RULES[rule].words} ({RULES[rule].source}).", "Limit: ")
    if any(path.estimated for path in sweep.paths):
        yield from _wrapped("About: a shield is in it, whose metal is estimated.")
    if sweep.paths:
        yield from _wrapped(SHORT_LEADS)


def _isolation_lines(isolation: IsolationPlan, methods: Sequence[IsolationPlan]) -> Iterator[str]:
    how = METHOD_WORDS[isolation.method].lower()
    yield from _wrapped(f"{_readings(isolation.count)}; {how}", "2 Isolation: ", "  ")
    yield from _wrapped(f"Good: {APART.words} ({APART.source}). {ORDER}", "  ")
    for place, probe in enumerate(isolation.probes, start=1):
        yield from _probe_lines(place, probe)
    if isolation.stop_after is not None:
        yield from _wrapped(isolation.stop_after.words, "  ")
    if not isolation.fewest:
        yield "  It is not proved that fewer readings would not do."
    yield from _bullets("does not show", isolation.unseen)
    others = [it for it in methods if it.method != isolation.method]
    yield from _bullets("other ways (--method)", [_other(it) for it in others])


def _probe_lines(place: int, probe: Probe) -> list[str]:
    if probe.pair is not None:
        names = f"{_name(probe.pair[0]):<8} {_name(probe.pair[1]):<8}"
        return [f"  {place:>3}  {names} {_gap(probe)}".rstrip()]
    sides = [" ".join(map(_name, side)) for side in (probe.one, probe.other)]
    return _wrapped(f"{sides[0]}  against  {sides[1]}", f"  {place:>3}  ")


def _gap(probe: Probe) -> str:
    if probe.gap_mm is None:
        return ""
    return f"{number(probe.gap_mm)} mm apart" if probe.gap_mm > 0 else "may touch"


def _other(isolation: IsolationPlan) -> str:
    clips = f", {isolation.clips} clips" if isolation.clips else ""
    return f"{isolation.method}: {_readings(isolation.count)}{clips}"
