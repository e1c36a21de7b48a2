"""What the builder chose for the bench: one INI file, read and written here and nowhere else."""

import os
from pathlib import Path
from typing import TYPE_CHECKING, Literal, cast

from PySide6.QtCore import QObject, QSettings, QStandardPaths, Signal

from planner.app.recent import RecentPlan

if TYPE_CHECKING:
    from tempfile import TemporaryDirectory

Paper = Literal["a4", "letter"]
Language = Literal["en", "de"]
Theme = Literal["system", "light", "dark"]

CHOICES: dict[str, tuple[str, ...]] = {
    "units": ("mm", "inch"),
    "gauge": ("awg", "mm2"),
    "paper": ("a4", "letter"),
    "language": ("en", "de"),
    "theme": ("system", "light", "dark"),
}
MOST_RECENT = 8


def settings_path() -> Path:
    """Return where the settings lie: the folder CUPWRIGHT_SETTINGS, else the user's own."""
    named = os.environ.get("CUPWRIGHT_SETTINGS")
    if named:
        return Path(named) / "cupwright.ini"
    place = QStandardPaths.StandardLocation.GenericConfigLocation
    return Path(QStandardPaths.writableLocation(place)) / "cupwright" / "cupwright.ini"


def use_fresh_profile() -> "TemporaryDirectory[str]":
    """Point settings and data at a new empty folder, which goes when the result is cleaned up."""
    from tempfile import TemporaryDirectory  # noqa: PLC0415 - not before the window is shown

    folder = TemporaryDirectory(prefix="cupwright-fresh-", ignore_cleanup_errors=True)
    os.environ["CUPWRIGHT_SETTINGS"] = folder.name
    os.environ["CUPWRIGHT_DATA"] = folder.name
    return folder


class Settings(QObject):
    """Read and write the settings; `changed` names the one that was changed.

    Attributes are plain values; what the file says is checked against what is allowed, so that a
    file edited by hand can never bring the window down.
    """

    changed = Signal(str)

    def __init__(self, path: Path | None = None, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._store = QSettings(str(path or settings_path()), QSettings.Format.IniFormat)

    def _text(self, key: str, default: str = "") -> str:
        value = self._store.value(key, default)
        return value if isinstance(value, str) else default

    def _texts(self, key: str) -> tuple[str, ...]:
        value = self._store.value(key, [])
        listed = value if isinstance(value, list) else [value]
        return tuple(text for text in listed if isinstance(text, str) and text)

    def _put(self, key: str, value: object) -> None:
        if self._store.value(key) != value:
            self._store.setValue(key, value)
            self.changed.emit(key)

    def choice(self, key: str) -> str:
        """Return one of CHOICES[key]; the first of them stands where nothing fit is stored."""
        value = self._text(key)
        return value if value in CHOICES[key] else CHOICES[key][0]

    def choose(self, key: str, value: str) -> None:
        """Store one of CHOICES[key]; ValueError otherwise."""
        if value not in CHOICES[key]:
            msg = f"{key} is one of {', '.join(CHOICES[key])}, not {value!r}"
            raise ValueError(msg)
        self._put(key, value)

    @property
    def paper(self) -> Paper:
        """The paper that sheets are laid out for."""
        return cast("Paper", self.choice("paper"))

    @property
    def language(self) -> Language:
        """The language of the sheet."""
        return cast("Language", self.choice("language"))

    @property
    def theme(self) -> Theme:
        """Light, dark, or as the system has it."""
        return cast("Theme", self.choice("theme"))

    @property
    def bench_name(self) -> str:
        """The name of the bench, shown top right."""
        return self._text("bench_name")

    @bench_name.setter
    def bench_name(self, name: str) -> None:
        self._put("bench_name", name.strip())

    @property
    def autosave(self) -> bool:
        """Whether a copy is kept for recovery while the builder works."""
        return self._text("autosave", "yes") != "no"

    @autosave.setter
    def autosave(self, wanted: bool) -> None:
        self._put("autosave", "yes" if wanted else "no")

    @property
    def folders(self) -> tuple[Path, ...]:
        """The builder's further library folders, in the order in which they are read."""
        return tuple(Path(text) for text in self._texts("folders"))

    @folders.setter
    def folders(self, folders: tuple[Path, ...]) -> None:
        self._put("folders", [str(folder) for folder in folders])

    @property
    def recent(self) -> tuple[RecentPlan, ...]:
        """Plans opened or saved lately, latest first."""
        read = (RecentPlan.from_text(text) for text in self._texts("recent"))
        return tuple(plan for plan in read if plan is not None)

    def remember(self, plan: RecentPlan) -> None:
        """Put a plan file at the head of the recent ones."""
        others = [known for known in self.recent if known.path != plan.path]
        self._put("recent", [known.as_text() for known in (plan, *others)][:MOST_RECENT])

    def forget(self, path: Path) -> None:
        """Drop a plan file from the recent ones (it is gone, or it can't be read)."""
        self._put("recent", [known.as_text() for known in self.recent if known.path != path])

    @property
    def last_folder(self) -> Path:
        """Where the builder last opened or saved something."""
        text = self._text("last_folder")
        return Path(text) if text else Path.home()

    @last_folder.setter
    def last_folder(self, folder: Path) -> None:
        self._put("last_folder", str(folder))

    @property
    def geometry(self) -> str:
        """The window's size as `WIDTHxHEIGHT`, empty at first."""
        return self._text("window_size")

    @geometry.setter
    def geometry(self, size: str) -> None:
        self._put("window_size", size)

    def flush(self) -> None:
        """Write what is still only in memory."""
        self._store.sync()
