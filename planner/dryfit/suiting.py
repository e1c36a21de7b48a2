"""Which parts are made for a plug: told by its diameters, its length and its maker."""

from planner.model.connector import Connector
from planner.model.part import Part

# A part suits a plug where its figures are this near: our own choice, no source.
NEAR_MM = 0.5
# A liner and a collet lie against the wall: from this share of the shell's bore up. Our own choice,
# no source.
_AT_WALL = 0.9


def is_shell(part: Part, connector: Connector) -> bool:
    """Tell whether it closes this plug: as thick and as long as the plug is when it is closed."""
    length = abs(part.length_mm - connector.barrel.length_mm) <= NEAR_MM
    return part.kind == "shell" and length and _as_thick(part, connector)


def is_boot(part: Part, connector: Connector) -> bool:
    """Tell whether it is a boot that ends as thick as this plug."""
    return part.kind == "boot" and _as_thick(part, connector)


def is_clamp(part: Part, connector: Connector) -> bool:
    """Tell whether it opens as wide as this plug's clamp and lies against the shell."""
    opens = abs(part.bore_mm - connector.clamp.max_mm) <= NEAR_MM
    return part.kind == "clamp" and opens and _lies_in(part, connector)


def is_liner(part: Part, connector: Connector) -> bool:
    """Tell whether it is a liner that lies against this plug's shell."""
    return part.kind == "liner" and _lies_in(part, connector)


def _as_thick(part: Part, connector: Connector) -> bool:
    return _made_for(part, connector) and (
        abs(part.outside_mm - connector.barrel.outside_mm) <= NEAR_MM
    )


def _lies_in(part: Part, connector: Connector) -> bool:
    shell = connector.shell
    in_bore = _AT_WALL * shell.bore_mm <= part.outside_mm <= shell.bore_mm
    return _made_for(part, connector) and shell.shape == "round" and in_bore


def _made_for(part: Part, connector: Connector) -> bool:
    """Take a part with a maker's name for plugs of that maker only: the threads are its own."""
    return part.maker in {"", connector.maker}
