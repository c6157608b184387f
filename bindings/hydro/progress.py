"""How far a long answer is, told on standard error; only where that is a terminal."""

from __future__ import annotations

import sys

TYPE_CHECKING = False  # as in typing, which takes long to import
if TYPE_CHECKING:
    from collections.abc import Callable
    from typing import Any


def shown() -> Callable[[int, int], None] | None:
    """What `progress=True` calls: a bar of tqdm, without that a line for each tenth; or nobody."""
    if not sys.stderr.isatty():
        return None
    try:
        from tqdm import tqdm
    except ImportError:
        return _lines()
    return _bar(tqdm)


def _bar(tqdm: Any) -> Callable[[int, int], None]:
    bar = tqdm(leave=False)

    def tell(done: int, of: int) -> None:
        bar.total, bar.n = of, done
        bar.refresh()
        if done == of:
            bar.close()

    return tell


def _lines() -> Callable[[int, int], None]:
    told = -1

    def tell(done: int, of: int) -> None:
        nonlocal told
        tenths = 10 * done // of if of else 10
        if tenths != told:
            told = tenths
            print(f"{done} of {of}", file=sys.stderr)

    return tell
