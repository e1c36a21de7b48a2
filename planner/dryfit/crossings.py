"""Which leads cross as seen from the solder side."""

from collections.abc import Sequence

from planner.dryfit.bodies import Lead
from planner.geometry.segments import cross_in_plane


def crossing_pairs(leads: Sequence[Lead]) -> tuple[tuple[str, str], ...]:
    """Return the pairs of cores whose straight leads cross; tails are bent aside, not counted."""
    cores = sorted(
        (lead for lead in leads if not lead.is_shield), key=lambda lead: lead.landing.conductor
    )
    return tuple(
        (one.landing.conductor, other.landing.conductor)
        for place, one in enumerate(cores)
        for other in cores[place + 1 :]
        if cross_in_plane(one.exit[:2], one.mouth[:2], other.exit[:2], other.mouth[:2])
    )
