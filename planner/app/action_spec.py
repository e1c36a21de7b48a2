"""What an action of the window is: words, tip, keys or why there are none, menu, scope."""

from dataclasses import dataclass
from typing import Literal

# Where the keys work. Single letters never work everywhere (WCAG 2.2, 2.1.4): `bench` is the
# canvas of the lead, `fit` the view of the dry fit, `work` that of the order of work, `prove` that
# of proving, `walk` all of them and the panels beside them.
Scope = Literal["window", "bench", "fit", "work", "prove", "walk"]


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
