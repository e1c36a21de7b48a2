"""How thick a bundle of round wires is: what surely fits, what surely does not."""

import math
from collections.abc import Sequence

# Enclosing over wire diameter for n equal circles: Kravitz, Math. Mag. 40 (1967) 65-71; Pirl 1969;
# Graham, Lubachevsky, Nurmela, Ostergard, Discrete Math. 181 (1998) 139-154.
EQUAL_RATIO = (
    0.0, 1.0, 2.0, 2.1547, 2.4142, 2.7013, 3.0, 3.0, 3.3048, 3.6131, 3.8130,
    3.9238, 4.0296, 4.2361, 4.3284, 4.5214, 4.6154, 4.7920, 4.8637, 4.8637, 5.1223,
)  # fmt: skip


def bundle_at_most_mm(diameters_mm: Sequence[float]) -> float:
    """Return a diameter into which the wires surely go: all taken as thick as the thickest.

    Beyond 20 wires sqrt(1.332 n) wire diameters, with 5 in 100 added.
    """
    if not diameters_mm:
        return 0.0
    if len(diameters_mm) == 2:
        return sum(diameters_mm)
    n, thickest = len(diameters_mm), max(diameters_mm)
    ratio = EQUAL_RATIO[n] if n < len(EQUAL_RATIO) else 1.05 * math.sqrt(1.332 * n)
    return ratio * thickest


def bundle_at_least_mm(diameters_mm: Sequence[float]) -> float:
    """Return a diameter below which the wires surely do not go: two thickest, or total area."""
    if not diameters_mm:
        return 0.0
    two = sum(sorted(diameters_mm)[-2:])
    return max(two, math.sqrt(sum(diameter**2 for diameter in diameters_mm)))
