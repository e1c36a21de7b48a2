"""Random leads and random edits, for properties that every edit must keep."""

from hypothesis import strategies as st

from planner.dryfit.parts import proposals
from planner.dryfit.work import steps
from planner.edits import cables, ends, landings, parts, routes_of_parts, shapes, texts, work
from planner.model.cable import Shield
from planner.model.part import Part
from planner.model.pinout import PinoutRecord
from planner.model.plan import Plan
from planner.problem import EditRefused
from planner.wiring.graph import Wiring
from tests.edits.leads import QUAD, TWO_PAIRS, cable, connector, pinout
from tests.edits.relabelling import relabel_end

SIGNALS = ("L+", "L-", "R+", "R-", "mic+", "shield", "L- R-", "+", "-", "chassis")
CONNECTORS = (
    connector("two", "T S"),
    connector("three-way", "T R S", takes=2),
    connector("five-way", "T R1 R2 R3 S", takes=3, gender="female", family="xlr"),
)
CABLES = (
    QUAD,
    TWO_PAIRS,
    cable("single", "WH", shields=(Shield(id="SH", kind="braid", tail_mm=0.5),)),
    cable("triple", "WH RD BK"),
)
STOCK = (
    Part(id="boot", title="boot", kind="boot", bore_mm=6, outside_mm=8, length_mm=20),
    Part(id="label", title="label", kind="label", bore_mm=5.5, outside_mm=6, length_mm=30),
    Part(
        id="shrink", title="shrink", kind="heat-shrink", bore_mm=6, recovered_mm=0.5,
        outside_mm=7, length_mm=60,
    ),
    Part(id="cover", title="cover", kind="cover", bore_mm=7, outside_mm=12, length_mm=30),
    Part(
        id="halves", title="halves", kind="cover", bore_mm=5, outside_mm=12, length_mm=30,
        opens=True,
    ),
)  # fmt: skip
POLICIES = (None, "both-ends", "source-end", "load-end", "isolated")


@st.composite
def records(draw, hardware) -> PinoutRecord:
    """A pinout for a connector: some contacts carry something, channels all open or all named."""
    open_channels = draw(st.booleans())
    allowed = [
        it for it in SIGNALS if ({"+", "-"} & {it} == set()) != open_channels or it in {"shield"}
    ]
    signals = {
        contact.id: draw(st.sampled_from(allowed))
        for contact in hardware.contacts
        if draw(st.integers(0, 4))
    } or {hardware.contacts[0].id: allowed[0]}
    drive = draw(st.sampled_from(("load", "single-ended", "driven-balanced", "line")))
    made = pinout("record", hardware.id, drive, **{f"_{key}": it for key, it in signals.items()})
    return made.evolve(id=f"record-{abs(hash(made.model_dump_json())) % 10**9}")


@st.composite
def leads(draw) -> Plan:
    """A lead of any shape, mostly furnished, with nothing landed."""
    shape = draw(st.sampled_from((1, 2, 3)))
    plan = shapes.one_to_one() if shape == 1 else shapes.one_to_two()
    if shape == 3:
        plan = shapes.one_to_many(3)
    for end in plan.ends:
        if draw(st.integers(0, 9)):
            hardware = draw(st.sampled_from(CONNECTORS))
            plan = ends.choose_connector(
                plan, end=end.id, connector=hardware, pinout=draw(records(hardware))
            )
    plan = cables.choose_cable(plan, section="trunk", cable=draw(st.sampled_from(CABLES)))
    policy = draw(st.sampled_from(POLICIES))
    return cables.set_shield_policy(plan, section="trunk", policy=policy)


@st.composite
def edited(draw, plan: Plan) -> Plan:
    """The plan after one edit that may be refused; then it is the plan itself."""
    act = draw(st.sampled_from(sorted(_ACTS)))
    try:
        return _ACTS[act](draw, plan)
    except EditRefused:
        return plan


def _end(draw, plan):
    return draw(st.sampled_from([it.id for it in plan.ends]))


def _conductor(draw, plan):
    return draw(st.sampled_from([*(it.id for it in plan.conductors), "none"]))


def _contact(draw, plan, end):
    known = plan.connector_of(end)
    return draw(st.sampled_from([*(known.by_id if known else ()), "T"]))


def _section(draw, plan):
    return draw(st.sampled_from([it.id for it in plan.sections]))


def _land(draw, plan, edit=landings.land):
    end = _end(draw, plan)
    conductor, contact = _conductor(draw, plan), _contact(draw, plan, end)
    return edit(plan, end=end, conductor=conductor, contact=contact)


def _at(edit):
    return lambda draw, plan: edit(plan, end=_end(draw, plan), conductor=_conductor(draw, plan))


def _link(draw, plan, edit=landings.link):
    end = _end(draw, plan)
    return edit(plan, end=end, contacts=(_contact(draw, plan, end), _contact(draw, plan, end)))


def _choose(draw, plan):
    hardware = draw(st.sampled_from(CONNECTORS))
    record = draw(st.none() | records(hardware))
    return ends.choose_connector(plan, end=_end(draw, plan), connector=hardware, pinout=record)


def _cable(draw, plan):
    taken = draw(st.sampled_from(CABLES))
    return cables.choose_cable(plan, section=_section(draw, plan), cable=taken)


def _add_leg(draw, plan):
    return shapes.add_leg(plan, end=draw(st.sampled_from(("M", "N", "L"))))


def _policy(draw, plan):
    policy = draw(st.sampled_from(POLICIES))
    return cables.set_shield_policy(plan, section=_section(draw, plan), policy=policy)


def _take(draw, plan):
    """Take what is proposed; or twice, or after the lead has changed, so that it may be refused."""
    wanted = proposals(plan, STOCK)
    plan = draw(edited(plan)) if draw(st.booleans()) else plan
    return parts.take_parts(plan, proposals=wanted)


def _use(draw, plan):
    return draw(st.sampled_from([*(it.id for it in plan.parts), "none"]))


def _route(draw, plan):
    section = draw(st.sampled_from(["", *(it.id for it in plan.sections)]))
    late = draw(st.booleans())
    use, end = _use(draw, plan), _end(draw, plan)
    return routes_of_parts.set_route(
        plan, use=use, comes_from=end, after_joint=late, section=section
    )


def _move(draw, plan):
    names = [it.id for it in steps(plan, Wiring(plan))]
    step = draw(st.sampled_from([*names, "none"]))
    return work.move_step(plan, step=step, to=draw(st.integers(1, len(names) + 1)))


_ACTS = {
    "add leg": _add_leg,
    "cable": _cable,
    "cap": _at(landings.cap),
    "choose": _choose,
    "exchange": lambda draw, plan: _land(draw, plan, landings.exchange),
    "fan out": lambda draw, plan: cables.fan_out(
        plan, section=_section(draw, plan), trunk=_section(draw, plan)
    ),
    "land": _land,
    "move step": _move,
    "lift": _at(landings.lift),
    "link": _link,
    "policy": _policy,
    "relabel": lambda draw, plan: relabel_end(
        plan, end=_end(draw, plan), label=draw(st.sampled_from(("X", "Y", "A")))
    ),
    "part off": lambda draw, plan: parts.remove_part(plan, use=_use(draw, plan)),
    "part's route": _route,
    "remove leg": lambda draw, plan: shapes.remove_leg(plan, end=_end(draw, plan)),
    "route": lambda draw, plan: cables.route(
        plan, conductor=_conductor(draw, plan), section=_section(draw, plan)
    ),
    "take parts": _take,
    "title": lambda draw, plan: texts.set_title(plan, title=draw(st.sampled_from(("a", "b")))),
    "uncap": _at(landings.uncap),
    "unlink": lambda draw, plan: _link(draw, plan, landings.unlink),
}
