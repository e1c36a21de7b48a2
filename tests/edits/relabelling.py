"""The same lead with another id at an end: what is told of it may not change but for that id."""

from planner.edits.changing import changed, node_ids, the_end
from planner.edits.refusal import NotAllowed


def relabel_end(plan, *, end, label):
    """Give an end another id, everywhere in the plan."""
    record = the_end(plan, end)
    if label == end:
        return plan
    if label in node_ids(plan):
        raise NotAllowed(f"There is {label} already", "Choose another label.")

    def relabelled(text):
        return label if text == end else text

    renamed = changed(record, id=label)
    return plan.evolve(
        ends=tuple(renamed if it.id == end else it for it in plan.ends),
        sections=tuple(
            it.evolve(near=relabelled(it.near), far=relabelled(it.far)) for it in plan.sections
        ),
        landings=tuple(it.evolve(end=relabelled(it.end)) for it in plan.landings),
        caps=tuple(it.evolve(end=relabelled(it.end)) for it in plan.caps),
        links=tuple(it.evolve(end=relabelled(it.end)) for it in plan.links),
        parts=tuple(
            it.evolve(at=relabelled(it.at), comes_from=relabelled(it.comes_from))
            for it in plan.parts
        ),
        acceptances=tuple(
            it.evolve(places=tuple(_place_relabelled(key, end, label) for key in it.places))
            for it in plan.acceptances
        ),
    )


def _place_relabelled(key, end, label):
    at, slash, rest = key.partition("/")
    return f"{label if at == end else at}{slash}{rest}"
