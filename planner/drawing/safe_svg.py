"""What an SVG may hold so that it looks alike in browsers, Qt, PDF converters and printers."""

import re
from collections.abc import Iterator
from xml.etree import ElementTree as ET

SVG = "{http://www.w3.org/2000/svg}"
_SHAPE = {
    "id",
    "transform",
    "fill",
    "fill-opacity",
    "fill-rule",
    "stroke",
    "stroke-width",
    "stroke-opacity",
    "stroke-linecap",
    "stroke-linejoin",
    "stroke-dasharray",
}
_OWN: dict[str, set[str]] = {
    "svg": {"width", "height", "viewBox", "version", "baseProfile", "font-family", "id"},
    "g": {"font-family"},
    "title": set(),
    "desc": set(),
    "rect": {"x", "y", "width", "height", "rx", "ry"},
    "circle": {"cx", "cy", "r"},
    "line": {"x1", "y1", "x2", "y2"},
    "polyline": {"points"},
    "polygon": {"points"},
    "path": {"d"},
    "text": {"x", "y", "font-size", "font-weight", "text-anchor"},
}
_WHOLE = re.compile(r"^-?\d+$")
_COLOUR = re.compile(r"^(?:none|#[0-9a-fA-F]{6})$")
_POINTS = re.compile(r"^-?\d+,-?\d+(?: -?\d+,-?\d+)*$")
_PATH = re.compile(r"^[MLCZ0-9 -]*$")
_TURN = re.compile(r"^rotate\(-?\d+(?:\.\d{1,3})?(?: -?\d+ -?\d+)?\)$")
_SHARE = re.compile(r"^[01](?:\.\d{1,3})?$")
_DASH = re.compile(r"^[1-9]\d*(?: [1-9]\d*)*$")
_SIZE = re.compile(r"^\d+(?:\.\d+)?(?:mm|px)$")
_VALUES = {
    "fill": _COLOUR,
    "stroke": _COLOUR,
    "fill-opacity": _SHARE,
    "stroke-opacity": _SHARE,
    "stroke-dasharray": _DASH,
    "transform": _TURN,
    "points": _POINTS,
    "d": _PATH,
    "font-weight": re.compile("^bold$"),
    "text-anchor": re.compile("^(?:middle|end)$"),
    "stroke-linecap": re.compile("^round$"),
    "stroke-linejoin": re.compile("^round$"),
}
_FREE = {"id", "font-family", "viewBox", "version", "baseProfile", "fill-rule"}


def unsafe_parts(text: str) -> tuple[str, ...]:
    """List what in an SVG file lies outside the safe subset; nothing means that it is safe."""
    lowered = text.lower()
    found = [f"{word} is not allowed" for word in ("<!doctype", "<!entity") if word in lowered]
    if found:
        return tuple(found)
    root = ET.fromstring(text.encode("utf-8"))  # noqa: S314 - our own output, no entities in it
    return tuple(problem for element in root.iter() for problem in _problems(element, root))


def _problems(element: ET.Element, root: ET.Element) -> Iterator[str]:
    name = str(element.tag).removeprefix(SVG)
    if name not in _OWN or (name == "svg" and element is not root):
        yield f"<{name}> is not in the safe subset"
        return
    for key, value in element.attrib.items():
        if key not in _OWN[name] and (key not in _SHAPE or name in {"svg", "title", "desc"}):
            yield f"<{name}> may not have {key}"
        elif not _value_fits(name, key, value):
            yield f"<{name} {key}={value!r}> is not a safe value"
    if name == "text" and ("\n" in (element.text or "") or len(element)):
        yield "<text> holds more than one line"


def _value_fits(name: str, key: str, value: str) -> bool:
    if key in _FREE:
        return "," not in value if key == "font-family" else True
    if name == "svg":
        return bool(_SIZE.match(value))
    return bool(_VALUES.get(key, _WHOLE).match(value))
