"""Cable stock: cores, shields, lay at the cut end, jacket."""

import math
from functools import cached_property
from typing import Annotated, Any, Literal

from pydantic import AfterValidator, BeforeValidator, Field, WithJsonSchema, model_validator

from planner.model.base import Ident, Line, Paragraph, Record, Revision
from planner.units import awg_area_mm2, awg_of_area, rounded

Metal = Literal["copper", "tinned", "silver"]

# IEC 60757 letter codes and the words for them. GNYE is one code there, not two: the standard keeps
# it for the protective conductor, whichever of the two colours a maker takes for the ground.
COLOUR_WORDS = {
    "BK": "black",
    "BN": "brown",
    "RD": "red",
    "OG": "orange",
    "YE": "yellow",
    "GN": "green",
    "BU": "blue",
    "VT": "violet",
    "GY": "grey",
    "WH": "white",
    "PK": "pink",
    "TQ": "turquoise",
    "GD": "gold",
    "SR": "silver",
    "GNYE": "green-yellow",
}

# Diameter of a concentric lay over the strand diameter: exact for 1, 7, 19, 37 (geometry).
_CONCENTRIC = {1: 1.0, 7: 3.0, 19: 5.0, 37: 7.0}


def _check_colour(code: str) -> str:
    if code not in COLOUR_WORDS:
        msg = f"{code!r} is not a colour code of IEC 60757: use {' '.join(COLOUR_WORDS)}"
        raise ValueError(msg)
    return code


def _figure(name: str, value: object) -> float:
    if isinstance(value, bool) or not isinstance(value, int | float):
        msg = f"{name} is {value!r}: write a number"
        raise ValueError(msg)  # noqa: TRY004 - pydantic reports only ValueError
    return value


def _strand_mm(key: str, size: float, strands: float) -> float:
    """Return the strand diameter, to the digits a file keeps, of a size in `awg` or `area_mm2`."""
    if key == "awg" and not -3 <= size <= 60:
        msg = f"awg is {size}: write a gauge from -3 (0000) to 60"
        raise ValueError(msg)
    area = awg_area_mm2(size) if key == "awg" else size
    if not (0 < area < math.inf and strands >= 1):
        msg = "the size and the strands must be above zero"
        raise ValueError(msg)
    return rounded(math.sqrt(4 * area / math.pi / strands), 9)


def _one_spelling(codes: Any) -> Any:  # noqa: ANN401 - raw file data
    """Read green with a yellow stripe as green-yellow.

    Both print GNYE, and a builder cannot tell them apart on the wire. Of two spellings of one
    letter code the standard's own stays, so that a code on a sheet always means one drawing. Green
    on yellow stays what it is: YEGN.
    """
    return ("GNYE",) if isinstance(codes, list | tuple) and list(codes) == ["GN", "YE"] else codes


Colour = Annotated[
    str,
    AfterValidator(_check_colour),
    WithJsonSchema({"type": "string", "enum": list(COLOUR_WORDS)}),
]


class Core(Record):
    """One insulated conductor. `colours` has the body's colour, then the stripe's if there is one.

    Green-yellow is one colour, GNYE; ("GN", "YE") is read as it.

    In a file the size is given by exactly one of `strand_mm`, `awg` (of the whole conductor) or
    `area_mm2`; the record keeps the strand diameter. `x_mm`, `y_mm`: place at the cut end.
    """

    id: Ident
    colours: Annotated[tuple[Colour, ...], BeforeValidator(_one_spelling)] = Field(
        min_length=1, max_length=2
    )
    strands: int = Field(ge=1, le=1000)
    strand_mm: float = Field(gt=0, le=5)
    insulation_mm: float = Field(gt=0, le=20)
    metal: Metal = "copper"
    x_mm: float = Field(ge=-50, le=50)
    y_mm: float = Field(ge=-50, le=50)
    group: Line = ""

    @model_validator(mode="before")
    @classmethod
    def _size_given_once(cls, data: Any) -> Any:  # noqa: ANN401 - raw file data
        if not isinstance(data, dict):
            return data
        given = [key for key in ("strand_mm", "awg", "area_mm2") if key in data]
        if len(given) != 1:
            msg = "give the size once: strand_mm, awg or area_mm2"
            raise ValueError(msg)
        if given == ["strand_mm"]:
            return data
        data = dict(data)
        size = _figure(given[0], data.pop(given[0]))
        data["strand_mm"] = _strand_mm(given[0], size, _figure("strands", data.get("strands")))
        return data

    @model_validator(mode="after")
    def _copper_inside_insulation(self) -> "Core":
        if self.conductor_mm >= self.insulation_mm:
            msg = (
                f"the strands are {self.conductor_mm:.2f} mm thick, "
                f"the insulation {self.insulation_mm} mm: it must be larger"
            )
            raise ValueError(msg)
        return self

    @property
    def code(self) -> str:
        """Letter code, two colours written together: WH, WHRD."""
        return "".join(self.colours)

    @property
    def colour_words(self) -> str:
        """The colours in words: `white, red stripe`."""
        words = [COLOUR_WORDS[code] for code in self.colours]
        return words[0] if len(words) == 1 else f"{words[0]}, {words[1]} stripe"

    @property
    def area_mm2(self) -> float:
        """Metal cross section, mm2."""
        return self.strands * math.pi / 4 * self.strand_mm**2

    @property
    def gauge(self) -> float:
        """Gauge number, not rounded (ASTM B258 of the metal area)."""
        return awg_of_area(self.area_mm2)

    @property
    def conductor_mm(self) -> float:
        """Diameter over the bare strands: concentric lay, else sqrt(1.332 N) strand diameters."""
        factor = _CONCENTRIC.get(self.strands, math.sqrt(1.332 * self.strands))
        return factor * self.strand_mm


class Shield(Record):
    """A braid, foil or spiral round the cores named in `around` (none named: round all)."""

    id: Ident
    kind: Literal["braid", "foil", "spiral"]
    around: tuple[Ident, ...] = ()
    tail_mm: float = Field(gt=0, le=10, description="diameter of the twisted tail or drain wire")
    metal: Metal = "copper"


class Cable(Record):
    """One cable on a spool.

    `groups` says what cores of one group are: the two legs of a circuit (`pairs`), or cores meant
    to be `doubled` on one contact, as the opposite cores of a star quad are.
    `permittivity`: of the insulation, relative. `pf_per_m`: capacitance between the two legs of a
    circuit as the maker prints it; it goes before what is reckoned from permittivity and lay.
    """

    id: Ident
    revision: Revision = 1
    title: Line = Field(min_length=1)
    maker: Line = ""
    spool: Line = ""
    jacket_mm: float = Field(gt=0, le=60)
    jacket_colour: Colour = "BK"
    cores: tuple[Core, ...] = Field(min_length=1, max_length=256)
    shields: tuple[Shield, ...] = ()
    groups: Literal["pairs", "doubled"] = "pairs"
    permittivity: float | None = Field(default=None, ge=1, le=20)
    pf_per_m: float | None = Field(default=None, ge=1, le=100_000)
    remarks: Paragraph = ""

    @model_validator(mode="after")
    def _parts_agree(self) -> "Cable":
        names = [core.id for core in self.cores] + [shield.id for shield in self.shields]
        twice = {name for name in names if names.count(name) > 1}
        if twice:
            msg = f"{min(twice)!r} stands twice among cores and shields"
            raise ValueError(msg)
        for shield in self.shields:
            for core in shield.around:
                if core not in {known.id for known in self.cores}:
                    msg = f"shield {shield.id!r} is around {core!r}, which is no core of this cable"
                    raise ValueError(msg)
        return self

    @cached_property
    def core_by_id(self) -> dict[str, Core]:
        """Cores by id."""
        return {core.id: core for core in self.cores}

    def part(self, name: str) -> Core | Shield | None:
        """Return the core or shield of that id, or None if there is neither."""
        return self.core_by_id.get(name) or self.shield_by_id.get(name)

    @cached_property
    def shield_by_id(self) -> dict[str, Shield]:
        """Shields by id."""
        return {shield.id: shield for shield in self.shields}
