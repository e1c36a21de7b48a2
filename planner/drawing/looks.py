"""The palettes: one place for every colour, for the light and the dark window and for paper."""

from collections.abc import Mapping
from dataclasses import dataclass

# Body and hatch of each colour code of IEC 60757 (the codes are the standard's, the hues ours).
CoreColours = Mapping[str, tuple[str, str]]


@dataclass(frozen=True, slots=True)
class Look:
    """Every colour by what it is for, as `#rrggbb`, and the pen's unit of width.

    `line` is what a stroke called 1 wide measures in target units: 1 px on the canvas, 23 times
    0.01 mm on paper. `hatched_cores` is False on paper: a ring printed on a core would be looked
    for on the wire, so there the hatch stands in the flag only.
    """

    name: str
    paper: str
    panel: str
    bench: str
    field: str
    ink: str
    ink2: str
    accent: str
    on_accent: str
    stop: str
    caution: str
    caution_fill: str
    caution_ink: str
    note: str
    clear: str
    stop_wash: str
    caution_wash: str
    accent_wash: str
    edge: str
    rule: str
    centre: str
    casing: str
    brass: str
    wall: str
    brass_edge: str
    tin: str
    tin_edge: str
    tin_shine: str
    metal: str
    metal_hatch: str
    insulator: str
    bore: str
    jacket: str
    jacket_shine: str
    strand: str
    strand_edge: str
    cores: CoreColours
    line: float = 1.0
    hatched_cores: bool = True

    def core(self, code: str) -> tuple[str, str]:
        """Return (body, hatch) of a colour code; KeyError for one that IEC 60757 does not have."""
        return self.cores[code]


LIGHT = Look(
    name="light",
    paper="#fcfdfb",
    panel="#f1f4f1",
    bench="#dfe4e1",
    field="#ffffff",
    ink="#15232a",
    ink2="#4a5a60",
    accent="#0b5c73",
    on_accent="#ffffff",
    stop="#a61e17",
    caution="#7a4f00",
    caution_fill="#d99a00",
    caution_ink="#15232a",
    note="#35538a",
    clear="#0b6a5c",
    stop_wash="#fae6e2",
    caution_wash="#faf0d6",
    accent_wash="#d9ecf0",
    edge="#758489",
    rule="#cdd5d1",
    centre="#8a979b",
    casing="#15232a",
    brass="#ddbb6c",
    wall="#ddbb6c",
    brass_edge="#66501a",
    tin="#c4cccf",
    tin_edge="#4f5d63",
    tin_shine="#f4f7f7",
    metal="#d3d9d8",
    metal_hatch="#8d999c",
    insulator="#f0f2ec",
    bore="#2a363b",
    jacket="#47545a",
    jacket_shine="#5c6a70",
    strand="#c4cccf",
    strand_edge="#4f5d63",
    cores={
        "BK": ("#262d30", "#98a4a9"),
        "BN": ("#7a4e2d", "#e6cbb3"),
        "RD": ("#be332a", "#f7c9c3"),
        "OG": ("#c05c0a", "#ffead9"),
        "YE": ("#ecc93f", "#6a5200"),
        "GN": ("#28794a", "#aee0c2"),
        "BU": ("#2b60ab", "#b9d3f6"),
        "VT": ("#6f4aa3", "#d9c9f0"),
        "GY": ("#6f7b80", "#e8eced"),
        "WH": ("#ffffff", "#15232a"),
        "PK": ("#eba4b8", "#6e2340"),
        "TQ": ("#14797e", "#b5e6e6"),
        "GD": ("#b8922e", "#3a2a00"),
        "SR": ("#c3ccd1", "#3f4d54"),
        "GNYE": ("#2c7d36", "#f5dc4a"),
    },
)

DARK = Look(
    name="dark",
    paper="#192429",
    panel="#131c20",
    bench="#0c1316",
    field="#0e1619",
    ink="#e9efed",
    ink2="#a8b6b9",
    accent="#6fc7dc",
    on_accent="#08181d",
    stop="#ff8c7f",
    caution="#f0b94a",
    caution_fill="#f0b94a",
    caution_ink="#15232a",
    note="#9db8ec",
    clear="#62cdb6",
    stop_wash="#331d1d",
    caution_wash="#302713",
    accent_wash="#163943",
    edge="#718289",
    rule="#2b393f",
    centre="#6f7d82",
    casing="#e9efed",
    brass="#c9a65a",
    wall="#c9a65a",
    brass_edge="#f3dda4",
    tin="#aeb9bd",
    tin_edge="#f2f6f6",
    tin_shine="#ffffff",
    metal="#3c4a50",
    metal_hatch="#75868c",
    insulator="#202d32",
    bore="#070c0e",
    jacket="#0a1012",
    jacket_shine="#2a363b",
    strand="#aeb9bd",
    strand_edge="#4f5d63",
    cores={
        "BK": ("#0b0f11", "#7d8a8f"),
        "BN": ("#9a6a43", "#fbe9da"),
        "RD": ("#c4453b", "#f9d0cb"),
        "OG": ("#c4661a", "#fff0e2"),
        "YE": ("#dcbb35", "#4a3900"),
        "GN": ("#2f8453", "#b6e5c9"),
        "BU": ("#3c72be", "#c3daf8"),
        "VT": ("#8a66be", "#ece0fa"),
        "GY": ("#76838a", "#f4f7f7"),
        "WH": ("#e9edec", "#15232a"),
        "PK": ("#e79cb2", "#5e1a33"),
        "TQ": ("#1f868b", "#c9f0ef"),
        "GD": ("#c19c3a", "#382900"),
        "SR": ("#b6c1c7", "#2f3b41"),
        "GNYE": ("#318238", "#f8e468"),
    },
)

# Colour only on cores and copper, lightened so that ink shows on it and a photocopy keeps it.
PRINT = Look(
    name="print",
    paper="#ffffff",
    panel="#ffffff",
    bench="#ffffff",
    field="#ffffff",
    ink="#000000",
    ink2="#000000",
    accent="#000000",
    on_accent="#ffffff",
    stop="#000000",
    caution="#000000",
    caution_fill="#ffffff",
    caution_ink="#000000",
    note="#000000",
    clear="#000000",
    stop_wash="#ffffff",
    caution_wash="#ffffff",
    accent_wash="#ffffff",
    edge="#000000",
    rule="#000000",
    centre="#8a8a8a",
    casing="#000000",
    brass="#ffffff",
    wall="#000000",
    brass_edge="#000000",
    tin="#c3c9ce",
    tin_edge="#000000",
    tin_shine="#ffffff",
    metal="#ffffff",
    metal_hatch="#8a8a8a",
    insulator="#ececec",
    bore="#ffffff",
    jacket="#ececec",
    jacket_shine="#ffffff",
    strand="#e6b87f",
    strand_edge="#000000",
    cores={
        "BK": ("#1a1a1a", "#ffffff"),
        "BN": ("#c08d62", "#000000"),
        "RD": ("#ea675b", "#000000"),
        "OG": ("#f5a95f", "#000000"),
        "YE": ("#ffe478", "#000000"),
        "GN": ("#7cc397", "#000000"),
        "BU": ("#86b0e8", "#000000"),
        "VT": ("#bd9ae0", "#000000"),
        "GY": ("#c6cbcd", "#000000"),
        "WH": ("#ffffff", "#000000"),
        "PK": ("#f8bccb", "#000000"),
        "TQ": ("#7ad0cf", "#000000"),
        "GD": ("#dcbd6c", "#000000"),
        "SR": ("#dde3e6", "#000000"),
        "GNYE": ("#b4d964", "#000000"),
    },
    line=23.0,
    hatched_cores=False,
)


def _linear(channel: int) -> float:
    share = channel / 255
    return share / 12.92 if share <= 0.04045 else float(((share + 0.055) / 1.055) ** 2.4)


def luminance(colour: str) -> float:
    """Return the relative luminance of `#rrggbb`, 0 to 1. WCAG 2.2, definition of the term."""
    red, green, blue = (int(colour[place : place + 2], 16) for place in (1, 3, 5))
    return 0.2126 * _linear(red) + 0.7152 * _linear(green) + 0.0722 * _linear(blue)


def contrast(one: str, other: str) -> float:
    """Return the contrast ratio of two colours, 1 to 21. WCAG 2.2, definition of the term."""
    darker, lighter = sorted((luminance(one), luminance(other)))
    return (lighter + 0.05) / (darker + 0.05)
