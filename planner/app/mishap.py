"""A fault of the program itself: logged, said plainly, and the plan stays as it was."""

import logging
import sys
from collections.abc import Callable
from types import TracebackType

log = logging.getLogger(__name__)


class MishapHook:
    """Stand in for sys.excepthook while the window is open; one dialog at a time."""

    def __init__(self, tell: Callable[[str], None]) -> None:
        self._tell = tell
        self._older = sys.excepthook
        self._telling = False

    def install(self) -> None:
        """Begin to catch what no slot caught."""
        sys.excepthook = self

    def remove(self) -> None:
        """Put back what was there before."""
        if sys.excepthook is self:
            sys.excepthook = self._older

    def __call__(
        self,
        kind: type[BaseException],
        error: BaseException,
        trace: TracebackType | None,
    ) -> None:
        """Log the fault, and tell it unless one is being told already."""
        if issubclass(kind, KeyboardInterrupt):
            self._older(kind, error, trace)
            return
        log.error("unforeseen fault", exc_info=(kind, error, trace))
        if self._telling:
            return
        self._telling = True
        try:
            self._tell(f"{kind.__name__}: {error}")
        finally:
            self._telling = False
