"""Wire sizes against ASTM B258, printed figures, an independent library, and plain geometry."""

import math

import pytest

from planner.model.cable import COLOUR_WORDS, Core
from planner.units import awg_area_mm2, awg_diameter_mm, awg_of_area

# AWG: diameter mm, area mm2; computed from the formula of ASTM B258, rounded as printed.
PRINTED = {
    18: (1.0237, 0.82305),
    20: (0.8118, 0.51762),
    22: (0.6438, 0.32553),
    24: (0.5106, 0.20473),
    26: (0.4049, 0.12876),
    28: (0.3211, 0.08098),
    30: (0.2546, 0.05093),
    32: (0.2019, 0.03203),
    34: (0.1601, 0.02014),
}
# Two-decimal diameters as handbooks print them, mm; from memory. Tables round: 0.4 % and the
# last digit.
HANDBOOK = {18: 1.02, 20: 0.812, 22: 0.644, 24: 0.511, 26: 0.405, 28: 0.321, 30: 0.255}
# Strands, strand mm: copper mm2, outside diameter of the concentric lay mm (computed).
CONSTRUCTIONS = {
    (7, 0.10): (0.0550, 0.300),
    (7, 0.127): (0.0887, 0.381),
    (7, 0.16): (0.1407, 0.480),
    (7, 0.20): (0.2199, 0.600),
    (19, 0.10): (0.1492, 0.500),
    (19, 0.127): (0.2407, 0.635),
    (19, 0.16): (0.3820, 0.800),
}
# IEC 60757, as quoted in secondary pages.
IEC_60757 = {
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
    "GD": "gold",
    "TQ": "turquoise",
    "SR": "silver",
    "GNYE": "green-yellow",
}


def core(strands, strand_mm, **more):
    fields = {"id": "c", "colours": ("WH",), "insulation_mm": 3.0, "x_mm": 0.0, "y_mm": 0.0}
    return Core(**fields | {"strands": strands, "strand_mm": strand_mm} | more)


@pytest.mark.parametrize("gauge", [-3, -2, -1, 0, 18, 26, 36, 40])
def test_formula(gauge):
    """ASTM B258: d = 0.127 mm x 92 ^ ((36 - n) / 39), here through logarithms."""
    want = math.exp(math.log(0.127) + (36 - gauge) / 39 * math.log(92))
    assert awg_diameter_mm(gauge) == pytest.approx(want, rel=1e-6)


def test_the_two_sizes_that_define_the_series():
    # ASTM B258: 0000 is 0.46 inch, 36 is 0.005 inch.
    assert awg_diameter_mm(-3) == pytest.approx(0.46 * 25.4, rel=1e-12)
    assert awg_diameter_mm(36) == pytest.approx(0.005 * 25.4, rel=1e-12)


@pytest.mark.parametrize("gauge", PRINTED)
def test_printed_diameter_and_area(gauge):
    diameter_mm, area_mm2 = PRINTED[gauge]
    assert awg_diameter_mm(gauge) == pytest.approx(diameter_mm, abs=0.00005)
    assert awg_area_mm2(gauge) == pytest.approx(area_mm2, abs=0.000005)
    assert awg_of_area(area_mm2) == pytest.approx(gauge, abs=0.003)


@pytest.mark.parametrize("gauge", HANDBOOK)
def test_handbook_diameter(gauge):
    assert awg_diameter_mm(gauge) == pytest.approx(HANDBOOK[gauge], rel=0.004)


@pytest.mark.parametrize("gauge", [0, *PRINTED, 36])
def test_against_fluids(gauge):
    """Independent library, after Machinery's Handbook; it rounds: within 0.4 %."""
    piping = pytest.importorskip("fluids.piping")
    want_mm = piping.t_from_gauge(gauge, SI=True, schedule="AWG") * 1000
    assert awg_diameter_mm(gauge) == pytest.approx(want_mm, rel=0.004)


@pytest.mark.parametrize("strands", [7, 19, 37])
def test_gauge_of_equal_strands(strands):
    """ASTM B258 for the area of N strands: gauge = strand's gauge - 9.930 log10 N."""
    want = 36 - 9.930 * math.log10(strands)
    assert core(strands, awg_diameter_mm(36)).gauge == pytest.approx(want, abs=0.001)


@pytest.mark.parametrize("build", CONSTRUCTIONS)
def test_construction(build):
    area_mm2, outside_mm = CONSTRUCTIONS[build]
    made = core(*build)
    assert made.area_mm2 == pytest.approx(area_mm2, abs=0.00005)
    assert made.conductor_mm == pytest.approx(outside_mm, abs=0.0005)


@pytest.mark.parametrize(("strands", "across"), [(1, 1), (7, 3), (19, 5), (37, 7)])
def test_concentric_lay_is_exact(strands, across):
    """Geometry: each layer of six more adds two strand diameters."""
    assert core(strands, 0.1).conductor_mm == pytest.approx(across * 0.1, rel=1e-12)


@pytest.mark.parametrize("area_mm2", [0.14, 0.22, 0.5])
def test_size_given_as_area_or_gauge_is_kept(area_mm2):
    fields = {"id": "c", "colours": ("WH",), "insulation_mm": 3.0, "x_mm": 0.0, "y_mm": 0.0}
    by_area = Core.model_validate(fields | {"strands": 7, "area_mm2": area_mm2})
    by_gauge = Core.model_validate(fields | {"strands": 7, "awg": awg_of_area(area_mm2)})
    assert by_area.area_mm2 == pytest.approx(area_mm2, rel=1e-6)
    assert by_gauge.strand_mm == pytest.approx(by_area.strand_mm, rel=1e-6)


def test_colour_codes_are_those_of_iec_60757():
    assert COLOUR_WORDS == IEC_60757


def test_the_ten_of_the_resistor_code_are_all_there():
    # IEC 60062 numbers its decade in these; cores of numbered pairs use them. From memory.
    assert {"BK", "BN", "RD", "OG", "YE", "GN", "BU", "VT", "GY", "WH"} <= set(COLOUR_WORDS)


def test_two_colours_are_written_together():
    # IEC 60757: RDBU is one core with two colours.
    assert core(7, 0.1, colours=("RD", "BU")).code == "RDBU"


def test_green_yellow_is_one_code_however_it_is_written():
    # IEC 60757 lists GNYE among the single codes, beside GN and YE.
    made = [core(7, 0.1, colours=it) for it in (("GNYE",), ("GN", "YE"))]
    assert [(it.code, it.colours, it.colour_words) for it in made] == [
        ("GNYE", ("GNYE",), "green-yellow")
    ] * 2
    assert core(7, 0.1, colours=("YE", "GN")).colour_words == "yellow, green stripe"


def test_no_letter_code_is_written_in_two_ways():
    pairs = [(one, other) for one in COLOUR_WORDS for other in (None, *COLOUR_WORDS)]
    kept = {core(7, 0.1, colours=tuple(filter(None, pair))).colours for pair in pairs}
    assert len({"".join(colours) for colours in kept}) == len(kept)
