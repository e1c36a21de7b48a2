"""AWG, mm2, mm and inch: parse, convert, print. The one place for units."""

import math
import re

MM_PER_INCH = 25.4
MINUS = "\u2212"
_NUMBER = r"([-+]?\d+(?:[.,]\d+)?)"
_LENGTH = re.compile(rf"^\s*{_NUMBER}\s*(mm|cm|m|in|inch|\"|ft)?\s*$")
_AWG = re.compile(r"^\s*(?:awg\s*(\d+(?:/0)?)|(\d+(?:/0)?)\s*awg)\s*$", re.IGNORECASE)
_MM_PER = {
    "mm": 1.0,
    "cm": 10.0,
    "m": 1000.0,
    "in": MM_PER_INCH,
    "inch": MM_PER_INCH,
    '"': MM_PER_INCH,
    "ft": 12 * MM_PER_INCH,
}


def awg_diameter_mm(gauge: float) -> float:
    """Return the solid diameter in mm of a gauge number; 0 to 0000 are 0 to -3. ASTM B258."""
    return 0.127 * math.pow(92.0, (36.0 - gauge) / 39.0)


def awg_area_mm2(gauge: float) -> float:
    """Return the solid area in mm2 of a gauge number. ASTM B258."""
    return math.pi / 4.0 * awg_diameter_mm(gauge) ** 2


def awg_of_area(area_mm2: float) -> float:
    """Return the gauge number, not rounded, of a solid area; ValueError if it is not above 0."""
    if not area_mm2 > 0:
        msg = f"an area must be above zero, not {area_mm2}"
        raise ValueError(msg)
    diameter_mm = math.sqrt(4.0 * area_mm2 / math.pi)
    return 36.0 - 39.0 * math.log(diameter_mm / 0.127, 92.0)


def parse_gauge(text: str) -> float:
    """Read `26 AWG`, `AWG 26` or `2/0 AWG` as a gauge number; ValueError otherwise."""
    match = _AWG.match(text)
    if match is None:
        msg = f"{text!r} is not a gauge such as '26 AWG'"
        raise ValueError(msg)
    number = match.group(1) or match.group(2)
    if number.endswith("/0"):
        return 1.0 - int(number[:-2])
    return float(number)


def parse_length_mm(text: str, default_unit: str = "mm") -> float:
    """Read `1.2 m`, `350`, `12 in` or `4 ft` (or decimal commas) as mm; ValueError otherwise."""
    match = _LENGTH.match(text.lower())
    if match is None:
        msg = f"{text!r} is not a length such as '1.2 m', '350 mm' or '12 in'"
        raise ValueError(msg)
    value = float(match.group(1).replace(",", "."))
    return value * _MM_PER[match.group(2) or default_unit]


def parse_figure(text: str, *units: str) -> float:
    """Read a number with one of the units or none behind it, a comma or a point in it.

    ValueError otherwise. A real minus is read as well as a hyphen.
    """
    plain = text.strip().replace(MINUS, "-")
    for unit in sorted(units, key=len, reverse=True):
        if plain.lower().endswith(unit.lower()):
            plain = plain[: -len(unit)]
            break
    match = re.fullmatch(rf"\s*{_NUMBER}\s*", plain)
    if match is None:
        msg = f"{text!r} is not a number" + (f" in {units[0]}" if units else "")
        raise ValueError(msg)
    return float(match.group(1).replace(",", "."))


def number(value: float, digits: int = 2) -> str:
    """Print a number with at most `digits` decimals, no trailing zeros, and a real minus."""
    text = f"{value:.{digits}f}"
    if "." in text:
        text = text.rstrip("0").rstrip(".")
    if text in {"-0", ""}:
        text = "0"
    return text.replace("-", MINUS)


def significant(value: float, digits: int = 3) -> str:
    """Print a number to so many significant digits, without an exponent, with a real minus."""
    if value == 0 or not math.isfinite(value):
        return number(value)
    above = math.floor(math.log10(abs(value))) + 1
    return number(round(value, digits - above), max(digits - above, 0))


def ohm_text(ohm: float) -> str:
    """Print a resistance to three significant digits: `0.225 Ω`."""
    return f"{significant(ohm)} Ω"


def frequency_text(hertz: float, digits: int = 3) -> str:
    """Print a frequency in Hz, kHz or MHz."""
    for unit, size in (("MHz", 1e6), ("kHz", 1e3)):
        if hertz >= size:
            return f"{significant(hertz / size, digits)} {unit}"
    return f"{significant(hertz, digits)} Hz"


def gauge_text(area_mm2: float) -> str:
    """Print an area as the nearest whole gauge, such as `26 AWG`."""
    gauge = round(awg_of_area(area_mm2))
    return f"{1 - gauge}/0 AWG" if gauge < 0 else f"{gauge} AWG"


def size_text(area_mm2: float, prefer: str = "mm2") -> str:
    """Print a conductor size in both units, the preferred (`mm2` or `awg`) first."""
    area = f"{number(area_mm2, 3)} mm\u00b2"
    gauge = gauge_text(area_mm2)
    return f"{gauge} ({area})" if prefer == "awg" else f"{area} ({gauge})"


def length_text(length_mm: float, unit: str = "mm") -> str:
    """Print a length: in `mm` mode metres from 1000 mm up, in `inch` mode inches."""
    if unit == "inch":
        return f"{number(length_mm / MM_PER_INCH, 3 if length_mm < MM_PER_INCH else 1)} in"
    if abs(length_mm) >= 1000:
        return f"{length_mm / 1000:.2f} m"
    return f"{number(length_mm)} mm"


def rounded(value: float, digits: int = 3) -> float:
    """Round for export; the one place where written figures are rounded. Never returns -0.0."""
    return round(value, digits) + 0.0
