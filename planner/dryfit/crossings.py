"""Which leads cross as seen from the solder side."""

from collections.abc import Sequence

import numpy as np

from planner.dryfit.bodies import Lead
from planner.geometry.turning import do_cross


def crossing_pairs(leads: Sequence[Lead]) -> tuple[tuple[str, str], ...]:
    """Return the pairs of cores whose straight leads cross; tails are bent aside, not counted."""
    cores = sorted(
        (lead for lead in leads if not lead.is_shield), key=lambda lead: lead.landing.conductor
    )
    exits = np.array([lead.exit[:2] for lead in cores]).reshape(-1, 2)
    mouths = np.array([lead.mouth[:2] for lead in cores]).reshape(-1, 2)
    first, second = np.triu_indices(len(cores), 1)
    cross = do_cross(exits[first], mouths[first], exits[second], mouths[second])
    names = [lead.landing.conductor for lead in cores]
    pairs = zip(first[cross].tolist(), second[cross].tolist(), strict=True)
    return tuple((names[one], names[other]) for one, other in pairs)
