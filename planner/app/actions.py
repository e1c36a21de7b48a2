"""Every action of the window as data: words, keys, tip; menus, buttons and the key list follow."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Literal

from PySide6.QtCore import QObject, Qt
from PySide6.QtGui import QAction, QKeySequence
from PySide6.QtWidgets import QWidget

# Where the keys work. Single letters never work everywhere (WCAG 2.2, 2.1.4): `bench` is the
# canvas of the lead, `fit` the view of the dry fit, `work` that of the order of work, `walk` all
# of them and the panels beside them.
Scope = Literal["window", "bench", "fit", "work", "walk"]


@dataclass(frozen=True, slots=True)
class ActionSpec:
    """One action. `keys` are portable; without any, `no_key` says why there is none."""

    name: str
    text: str
    tip: str
    keys: tuple[str, ...] = ()
    menu: str = ""
    scope: Scope = "window"
    icon: str = ""
    checkable: bool = False
    rule_above: bool = False
    no_key: str = ""


_RARE = "used once in a while; the menu is enough"
_CHOICE = "one of a set, chosen once"

SPECS = (
    ActionSpec("new", "&New plan", "Begin a new plan", ("Ctrl+N",), "Plan"),
    ActionSpec("open", "&Open\u2026", "Open a plan file", ("Ctrl+O",), "Plan"),
    ActionSpec(
        "demo",
        "Open the &demo",
        "Open the demo plan: a cue-desk headphone lead",
        menu="Plan",
        no_key="only to look around",
    ),
    ActionSpec("save", "&Save", "Save the plan", ("Ctrl+S",), "Plan", rule_above=True),
    ActionSpec(
        "save_as", "Save &as\u2026", "Save the plan in another file", ("Ctrl+Shift+S",), "Plan"
    ),
    ActionSpec(
        "details",
        "&Title and order\u2026",
        "Set the title, the order and the remarks",
        ("Ctrl+I",),
        "Plan",
        rule_above=True,
    ),
    ActionSpec(
        "sheet",
        "&Bench sheet\u2026",
        "See the bench sheet as it prints; print it, or write it as PDF or SVG",
        ("Ctrl+P",),
        "Plan",
        icon="sheet",
    ),
    ActionSpec(
        "settings",
        "S&ettings\u2026",
        "Units, paper, light or dark, library folders",
        ("Ctrl+,",),
        "Plan",
        rule_above=True,
    ),
    ActionSpec("quit", "&Quit", "Close the window", ("Ctrl+Q",), "Plan", rule_above=True),
    ActionSpec("undo", "&Undo", "Take back the last act", ("Ctrl+Z",), "Edit", icon="undo"),
    ActionSpec(
        "redo",
        "&Redo",
        "Do again what was taken back",
        ("Ctrl+Shift+Z", "Ctrl+Y"),
        "Edit",
        icon="redo",
    ),
    ActionSpec("wire", "&Wire", "Land cores on contacts", ("Alt+1",), "View", checkable=True),
    ActionSpec(
        "dry_fit",
        "Dr&y fit",
        "See one end as it will be soldered: turn, gaps, order, sleeves",
        ("Alt+2",),
        "View",
        checkable=True,
    ),
    ActionSpec(
        "work",
        "Order of wor&k",
        "See all steps from cutting to closing, what is threaded when, and what to cut",
        ("Alt+3",),
        "View",
        checkable=True,
    ),
    ActionSpec(
        "fit",
        "&Fit the lead",
        "Show the whole lead, or the whole end",
        ("F",),
        "View",
        "bench",
        icon="fit",
        rule_above=True,
    ),
    ActionSpec("zoom_in", "Zoom &in", "Draw larger", ("Ctrl++", "Ctrl+="), "View", icon="plus"),
    ActionSpec("zoom_out", "Zoom &out", "Draw smaller", ("Ctrl+-",), "View", icon="minus"),
    ActionSpec("zoom_reset", "&100 %", "Draw at 100 %", ("Ctrl+0",), "View"),
    ActionSpec(
        "one_scale",
        "One &scale for all ends",
        "Draw every end at the same scale",
        ("S",),
        "View",
        "bench",
        icon="one-scale",
        checkable=True,
    ),
    ActionSpec(
        "one_end",
        "One &end at a time",
        "Show one end, large, or the whole lead",
        ("E",),
        "View",
        "bench",
        checkable=True,
    ),
    ActionSpec("next_end", "Next en&d", "Show the next end, large", ("Ctrl+PgDown",), "View"),
    ActionSpec("previous_end", "End &before", "Show the end before, large", ("Ctrl+PgUp",), "View"),
    ActionSpec(
        "mating",
        "&Mating side",
        "Show the mating side, mirrored; nothing lands from there",
        ("Ctrl+M",),
        "View",
        checkable=True,
    ),
    ActionSpec(
        "shelf",
        "S&helf",
        "Fold the shelf away or open it",
        ("Ctrl+1",),
        "View",
        checkable=True,
        rule_above=True,
    ),
    ActionSpec(
        "landings",
        "&Landings",
        "Fold the landings away or open them",
        ("Ctrl+2",),
        "View",
        checkable=True,
    ),
    ActionSpec(
        "next_panel", "Ne&xt panel", "Go to the next panel", ("F6",), "View", rule_above=True
    ),
    ActionSpec(
        "previous_panel", "&Previous panel", "Go to the panel before", ("Shift+F6",), "View"
    ),
    ActionSpec(
        "search",
        "Sear&ch the shelf",
        "Search connectors, pinouts, cable and parts",
        ("/", "Ctrl+F"),
        "View",
        "walk",
    ),
    ActionSpec(
        "to_landings",
        "&Go to the landings",
        "Land from the list, by keyboard alone",
        ("Ctrl+L",),
        "View",
    ),
    ActionSpec(
        "theme_system",
        "As the &system",
        "Light or dark, as the system has it",
        menu="Look",
        checkable=True,
        no_key=_CHOICE,
    ),
    ActionSpec(
        "theme_light", "&Light", "Always light", menu="Look", checkable=True, no_key=_CHOICE
    ),
    ActionSpec("theme_dark", "&Dark", "Always dark", menu="Look", checkable=True, no_key=_CHOICE),
    ActionSpec(
        "land_by_signal",
        "&Land by signal",
        "Land every core that the pinouts make certain",
        ("G",),
        "Lead",
        "bench",
    ),
    ActionSpec(
        "land_end_by_signal",
        "Land th&is end by signal",
        "Land what is certain at the selected end",
        ("Shift+G",),
        "Lead",
        "bench",
    ),
    ActionSpec(
        "add_leg",
        "&Add a leg",
        "Add one more end at the split",
        menu="Lead",
        no_key=_RARE,
        rule_above=True,
    ),
    ActionSpec(
        "remove_leg",
        "&Remove the leg",
        "Take away the selected end and its cable",
        menu="Lead",
        no_key=_RARE,
    ),
    ActionSpec(
        "turn_left",
        "Turn the plug l&eft",
        "Turn the selected plug 10\u00b0 counter-clockwise",
        ("Ctrl+Left",),
        "Lead",
        rule_above=True,
    ),
    ActionSpec(
        "turn_right",
        "Turn the plug ri&ght",
        "Turn the selected plug 10\u00b0 clockwise",
        ("Ctrl+Right",),
        "Lead",
    ),
    ActionSpec(
        "best_turn",
        "&Best turn",
        "Turn the plug so that fewest leads cross and the smallest gap is widest",
        ("B",),
        "Lead",
        "fit",
    ),
    ActionSpec(
        "best_order",
        "Best &order",
        "Solder in the order in which the iron reaches every joint best",
        ("O",),
        "Lead",
        "fit",
    ),
    ActionSpec(
        "sleeve_advised",
        "&Sleeve as advised",
        "Put on the fewest sleeves and dabs that make every gap safe",
        ("Shift+S",),
        "Lead",
        "fit",
    ),
    ActionSpec(
        "parts_proposed",
        "&Parts as proposed",
        "Take the parts that the ends and splits still want, by what they must pass and grip",
        ("P",),
        "Lead",
        "work",
    ),
    ActionSpec(
        "computed_order",
        "&Computed order of work",
        "Do the steps in the order that is computed again",
        ("C",),
        "Lead",
        "work",
    ),
    ActionSpec(
        "workmanship",
        "&Workmanship\u2026",
        "Choose the rules that strips, sleeves, gaps and shield joints follow",
        menu="Lead",
        no_key=_RARE,
    ),
    ActionSpec(
        "next_finding",
        "&Next finding",
        "Go to the next finding",
        ("N",),
        "Lead",
        "walk",
        rule_above=True,
    ),
    ActionSpec(
        "previous_finding",
        "&Finding before",
        "Go to the finding before",
        ("Shift+N",),
        "Lead",
        "walk",
    ),
    ActionSpec("go_finding", "Go t&here", "Go to the first finding's place", ("Ctrl+G",), "Lead"),
    ActionSpec(
        "mend_finding",
        "&Mend it",
        "Mend the chosen finding, where the mend is certain",
        ("Ctrl+Return",),
        "Lead",
    ),
    ActionSpec("keys", "&Keys", "Show every key", ("F1",), "Help"),
    ActionSpec(
        "problems",
        "&Library problems\u2026",
        "Show the definition files that can\u2019t be used, and how to mend them",
        menu="Help",
        no_key=_RARE,
    ),
    ActionSpec("about", "&About Cupwright", "Version and licence", menu="Help", no_key=_RARE),
)
MENUS = ("Plan", "Edit", "View", "Lead", "Help")


def key_text(keys: tuple[str, ...]) -> str:
    """Print the first of some keys as a person reads it: `Ctrl + Z`."""
    if not keys:
        return ""
    return QKeySequence(keys[0]).toString(QKeySequence.SequenceFormat.NativeText)


class Actions(QObject):
    """The actions made from their specs. An action without a handler stays disabled."""

    def __init__(self, window: QWidget) -> None:
        super().__init__(window)
        self._made: dict[str, QAction] = {}
        self._handled: set[str] = set()
        for spec in SPECS:
            self._made[spec.name] = self._make(spec, window)

    def _make(self, spec: ActionSpec, window: QWidget) -> QAction:
        action = QAction(spec.text, self)
        action.setObjectName(spec.name)
        action.setShortcuts([QKeySequence(key) for key in spec.keys])
        shown = key_text(spec.keys)
        action.setToolTip(f"{spec.tip} ({shown})" if shown else spec.tip)
        action.setStatusTip(spec.tip)
        action.setCheckable(spec.checkable)
        action.setEnabled(False)
        if spec.scope != "window":
            action.setShortcutContext(Qt.ShortcutContext.WidgetWithChildrenShortcut)
        else:
            action.setShortcutContext(Qt.ShortcutContext.WindowShortcut)
            window.addAction(action)
        return action

    def __getitem__(self, name: str) -> QAction:
        return self._made[name]

    def __iter__(self) -> Iterator[tuple[ActionSpec, QAction]]:
        return ((spec, self._made[spec.name]) for spec in SPECS)

    def handle(self, name: str, slot: Callable[[], object]) -> None:
        """Give an action its one handler, and enable it."""
        action = self._made[name]
        action.triggered.connect(lambda _checked=False: slot())
        self._handled.add(name)
        action.setEnabled(True)

    def is_handled(self, name: str) -> bool:
        """Tell whether an action has a handler."""
        return name in self._handled

    def scope_to(self, widget: QWidget, *scopes: Scope) -> None:
        """Let the actions of these scopes work while `widget` or a child of it has the focus."""
        widget.addActions([action for spec, action in self if spec.scope in scopes])
