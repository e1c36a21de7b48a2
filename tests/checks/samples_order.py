"""A sample of a joint that the iron does not reach in any order. All figures are invented."""

from tests.checks.samples import bad
from tests.checks.samples_fit import ring_of_posts, with_plug


@bad("joint-hidden")
def a_joint_between_walls():
    """Twelve thick posts stand 4 mm above the one in the middle: no order helps."""
    plan = ring_of_posts(last="P12")
    middle, *ring = plan.definitions.connectors[0].contacts
    raised = tuple(
        post.evolve(terminal=post.terminal.evolve(z_mm=4, width_mm=0.6, depth_mm=6))
        for post in ring
    )
    return with_plug(plan, contacts=(middle, *raised))
