"""The PDF backend: a draw list to a file at true size, without Qt, the same bytes on any machine.

Text is set in the bundled face as outlines with their characters named, so it looks the same
everywhere and can be searched and copied. Nothing is compressed: libraries that compress differ,
and the bytes should not. Written after ISO 32000-1.
"""

import hashlib
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field

from planner.drawing.pdf_letters import Letters, fonts_for
from planner.drawing.pdf_paths import number, operators, paint_state
from planner.drawing.primitives import DrawList, Text
from planner.drawing.svg import plain_text

POINTS_PER_MM = 72 / 25.4


@dataclass(frozen=True, slots=True)
class PdfPage:
    """What stands on one page, and its size in units."""

    items: DrawList
    width: float
    height: float


def pdf_bytes(pages: Sequence[PdfPage], *, unit_mm: float = 0.01, title: str = "") -> bytes:
    """Return a PDF of `pages`, a unit of theirs being `unit_mm` mm, y down."""
    file = _File()
    letters = Letters(item for page in pages for item in page.items if isinstance(item, Text))
    fonts = [_font(file, body, shapes) for body, shapes in fonts_for(letters)]
    named = " ".join(f"/F{place} {font} 0 R" for place, font in enumerate(fonts))
    tree = file.reserve()
    kids = [_page(file, page, unit_mm, letters, (named, tree)) for page in pages]
    names = " ".join(f"{kid} 0 R" for kid in kids)
    file.put(tree, f"<< /Type /Pages /Count {len(kids)} /Kids [{names}] >>")
    root = file.add(f"<< /Type /Catalog /Pages {tree} 0 R >>")
    info = file.add(f"<< /Title {_string(title)} /Producer {_string('Cupwright')} >>")
    return file.written(root, info)


@dataclass
class _File:
    """The numbered objects of a file."""

    bodies: list[bytes] = field(default_factory=list)

    def reserve(self) -> int:
        self.bodies.append(b"")
        return len(self.bodies)

    def put(self, place: int, body: str) -> None:
        self.bodies[place - 1] = body.encode("ascii")

    def add(self, body: str) -> int:
        place = self.reserve()
        self.put(place, body)
        return place

    def stream(self, content: str) -> int:
        return self.add(f"<< /Length {len(content)} >>\nstream\n{content}\nendstream")

    def written(self, root: int, info: int) -> bytes:
        content = bytearray(b"%PDF-1.5\n%\xe2\xe3\xcf\xd3\n")
        table = bytearray(b"0000000000 65535 f \n")
        for place, body in enumerate(self.bodies, start=1):
            table += b"%010d 00000 n \n" % len(content)
            content += b"%d 0 obj\n%s\nendobj\n" % (place, body)
        digest = hashlib.sha256(content).hexdigest()[:32]
        size = len(self.bodies) + 1
        trailer = (
            f"trailer\n<< /Size {size} /Root {root} 0 R /Info {info} 0 R"
            f" /ID [<{digest}> <{digest}>] >>\nstartxref\n{len(content)}\n%%EOF\n"
        )
        return bytes(content + b"xref\n0 %d\n" % size + table + trailer.encode("ascii"))


def _string(text: str) -> str:
    """Return a text string as UTF-16 in hexadecimal: no character needs escaping."""
    return f"<FEFF{plain_text(text).encode('utf-16-be').hex().upper()}>"


def _font(file: _File, body: str, shapes: Sequence[str]) -> int:
    """Add a font and its glyphs; `body` has places for the glyphs' and the names' objects."""
    *glyphs, names = shapes
    procedures = " ".join(f"/g{code} {file.stream(shape)} 0 R" for code, shape in enumerate(glyphs))
    return file.add(body.format(procedures=procedures, names=f"{file.stream(names)} 0 R"))


def _page(
    file: _File, page: PdfPage, unit_mm: float, letters: Letters, parents: tuple[str, int]
) -> int:
    scale = POINTS_PER_MM * unit_mm
    width, height = page.width * scale, page.height * scale
    fonts, tree = parents
    shapes = (item for item in page.items if not isinstance(item, Text))
    opacities = sorted({1.0, *(shape.style.opacity for shape in shapes)})
    solid = f"/O{opacities.index(1.0)} gs"  # else letters are as faint as the shape before them
    lines = [f"{scale:.8f} 0 0 {-scale:.8f} 0 {height:.6f} cm"]
    for item in page.items:
        if isinstance(item, Text):
            lines += [solid, *letters.line(item)]
        else:
            lines += [*paint_state(item.style, opacities), *operators(item)]
    content = file.stream("\n".join(lines))
    resources = f"<< /Font << {fonts} >> /ExtGState << {_states(opacities)} >> >>"
    return file.add(
        f"<< /Type /Page /Parent {tree} 0 R /MediaBox [0 0 {width:.4f} {height:.4f}]"
        f" /Contents {content} 0 R /Resources {resources} >>"
    )


def _states(opacities: Iterable[float]) -> str:
    return " ".join(
        f"/O{place} << /ca {number(opacity)} /CA {number(opacity)} >>"
        for place, opacity in enumerate(opacities)
    )
