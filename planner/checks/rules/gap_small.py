"""gap-small: two bare bodies of different nets come too near."""

from collections.abc import Iterator

from planner.checks.context import Context
from planner.checks.registry import Found, rule
from planner.dryfit.bodies import Capsule
from planner.dryfit.gaps import Gap
from planner.model.place import Place
from planner.units import number


@rule(
    code="gap-small",
    title="Small gap",
    why="One stray strand or a little solder closes a small gap to a bridge.",
    weight="caution",
)
def gap_small(context: Context) -> Iterator[Found]:
    """Report the smallest gap of every two parties; tails have a rule of their own."""
    for fit in context.fit:
        for gap in fit.gaps:
            if "tail" not in {gap.first.kind, gap.second.kind}:
                yield found_gap(fit.end, gap)


def found_gap(end: str, gap: Gap) -> Found:
    """Say a gap: both bodies, the gap, the limit and the mend."""
    return Found(
        f"At {end}, {_body(gap.first)} and {_body(gap.second)} are {number(gap.gap_mm)} mm apart; "
        f"the limit here is {number(gap.limit_mm)} mm.",
        "Turn the plug, exchange alike cores, or put an insulating sleeve over one joint.",
        (_place(end, gap.first), _place(end, gap.second)),
        title=f"Gap {number(gap.gap_mm)} mm, class {gap.grade}",
        weight="stop" if gap.grade == "touch" else "caution",
    )


def _body(body: Capsule) -> str:
    if body.kind == "terminal":
        return f"contact {body.contact}"
    return f"the bare end of {body.conductor} on {body.contact}"


def _place(end: str, body: Capsule) -> Place:
    return Place(end=end, contact=body.contact, conductor=body.conductor)
