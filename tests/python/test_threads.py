"""Many threads and processes at once."""

import sys
import threading

import pytest

import hydro
from hydro import psi


def test_other_threads_run_while_a_layout_is_solved(layout):
    large = layout("40 psi", 200_000)
    done = threading.Event()

    def work():
        hydro.solve(large)
        done.set()

    interval = sys.getswitchinterval()
    sys.setswitchinterval(1000)  # nobody is made to yield: only who lets go lets others run
    try:
        worker = threading.Thread(target=work)
        worker.start()
        assert not done.is_set()
    finally:
        sys.setswitchinterval(interval)
        worker.join()
    assert done.is_set()


def test_threads_find_the_same(bench, after):
    found = []

    def work():
        for _ in range(20):
            found.append(hydro.solve(bench).line("row 2").pressure.to(psi).tobytes())

    workers = [threading.Thread(target=work) for _ in range(4)]
    for worker in workers:
        worker.start()
    for worker in workers:
        worker.join()
    assert len(found) == 80
    assert set(found) == {after.line("row 2").pressure.to(psi).tobytes()}
