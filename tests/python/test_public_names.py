"""No public name disappears unnoticed, and none comes without being written down."""

from headers import ROOT
from public_names import public_names

LISTED = (ROOT / "tests/public_names.txt").read_text().splitlines()


def test_no_public_name_disappears() -> None:
    gone = set(LISTED) - set(public_names())
    assert gone == set(), "users may hang on these: deprecate them first (DEVELOPERS.md)"


def test_every_public_name_is_listed() -> None:
    new = set(public_names()) - set(LISTED)
    assert new == set(), "write tests/public_names.txt anew (tests/python/public_names.py)"
