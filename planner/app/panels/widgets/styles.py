"""What only panels have, on top of the window's style sheet: tones, cards, fields with an error."""

from planner.drawing.looks import Look

# Sizes in px, from 12 up: nothing is smaller.
_TONES = """
QLabel {{ background: transparent; color: {ink}; font-size: 13px; }}
QLabel[tone="head"] {{ font-size: 15px; font-weight: bold; }}
QLabel[tone="question"] {{ font-size: 18px; font-weight: bold; }}
QLabel[tone="bold"] {{ font-weight: bold; }}
QLabel[tone="second"] {{ color: {ink2}; }}
QLabel[tone="small"] {{ color: {ink2}; font-size: 12px; }}
QLabel[tone="section"] {{ color: {ink2}; font-weight: bold; }}
QLabel[tone="accent"] {{ color: {accent}; font-weight: bold; }}
QLabel[tone="error"] {{ color: {stop}; font-size: 12px; }}
"""

_SURFACES = """
*[surface="panel"] {{ background: {panel}; }}
*[surface="paper"] {{ background: {paper}; }}
*[surface="clear"] {{ background: transparent; }}
QScrollArea {{ border: none; background: transparent; }}
QFrame[card="true"] {{ background: transparent; border: 2px solid transparent; }}
QFrame[card="true"][weight="stop"] {{ background: {stop_wash}; border-color: {stop_wash}; }}
QFrame[card="true"][current="true"] {{ border-color: {ink}; }}
*[picked="true"] {{ background: {accent_wash}; border-radius: 3px; }}
QFrame[line="true"] {{ background: {rule}; border: none; max-height: 1px; min-height: 1px; }}
QFrame[float="true"] {{ background: {field}; border: 1px solid {accent}; border-radius: 6px; }}
"""

_FIELDS = """
QLineEdit, QComboBox, QSpinBox {{ min-height: 26px; max-height: 30px; padding: 0 7px; }}
QLineEdit:focus, QComboBox:focus, QPlainTextEdit:focus, QSpinBox:focus {{
    border: 2px solid {accent}; padding: 0 6px; }}
QPlainTextEdit, QPlainTextEdit:focus {{ padding: 3px; }}
QLineEdit[wrong="true"] {{ border: 2px solid {stop}; padding: 0 6px; }}
QLineEdit[cell="true"] {{ border: 2px solid {accent}; border-radius: 0; padding: 0 6px;
    min-height: 0; max-height: 40px; }}
QSpinBox QLineEdit, QSpinBox QLineEdit:focus {{ border: none; padding: 0; min-height: 0;
    background: transparent; }}
QCheckBox {{ font-size: 13px; }}
"""

_BUTTONS = """
QPushButton {{ font-size: 13px; padding: 0 11px; min-height: 26px; }}
QPushButton:focus {{ border: 2px solid {ink}; padding: 0 10px; }}
QPushButton[role="shape"] {{ min-height: 58px; }}
QPushButton[role="primary"]:focus {{ border: 2px solid {ink}; }}
QPushButton[role="plain"] {{ color: {accent}; padding: 0 4px; text-align: left; }}
QPushButton[role="plain"]:focus {{ border: 2px solid {ink}; padding: 0 3px; }}
"""

_LISTS = """
QAbstractScrollArea::corner {{ background: transparent; border: none; }}
QListView, QTableView {{ background: transparent; border: none; outline: none; color: {ink};
    font-size: 13px; selection-background-color: {accent_wash}; selection-color: {ink}; }}
"""


def panel_qss(look: Look) -> str:
    """Return the style sheet of a panel in a look."""
    text = _TONES + _SURFACES + _FIELDS + _BUTTONS + _LISTS
    return text.format(**{name: getattr(look, name) for name in _TOKENS})


_TOKENS = [
    "paper",
    "panel",
    "bench",
    "field",
    "ink",
    "ink2",
    "accent",
    "on_accent",
    "stop",
    "caution",
    "stop_wash",
    "caution_wash",
    "accent_wash",
    "edge",
    "rule",
]
