"""Resistivity of the metals of conductors, and how it grows with temperature."""

from dataclasses import dataclass

from planner.model.cable import Metal

REFERENCE_C = 20.0


@dataclass(frozen=True, slots=True)
class Conduction:
    """Resistivity at 20 C in ohm mm2/m, the rise per kelvin from there, and their source."""

    ohm_mm2_per_m: float
    rise_per_k: float
    source: str


ANNEALED_COPPER = Conduction(1 / 58, 0.00393, "IEC 60028")

# Tinned copper is taken as the copper under the tin. IEC 60228 allows tinned conductors some 3 %
# more than plain ones, so a tinned core may measure a little above the figure given here.
CONDUCTION: dict[Metal, Conduction] = {
    "copper": ANNEALED_COPPER,
    "tinned": ANNEALED_COPPER,
    # Matula, J. Phys. Chem. Ref. Data 8 (1979) for the resistivity; the rise is from memory.
    "silver": Conduction(0.01587, 0.0038, "Matula 1979"),
}


def temperature_factor(metal: Metal, temperature_c: float) -> float:
    """Return resistance at a temperature over that at 20 C. Linear law of IEC 60028."""
    return 1 + CONDUCTION[metal].rise_per_k * (temperature_c - REFERENCE_C)


def resistivity(metal: Metal, temperature_c: float = REFERENCE_C) -> float:
    """Return the resistivity in ohm mm2/m at a temperature."""
    return CONDUCTION[metal].ohm_mm2_per_m * temperature_factor(metal, temperature_c)
