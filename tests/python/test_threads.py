"""Many threads and processes at once: they run beside each other and find the same."""

import concurrent.futures
import multiprocessing
import pickle
import sys
import threading
import time
from collections.abc import Callable, Iterator

import pytest

import hydro
from hydro import ft, gpm, inch, psi

SERIES = ("distance", "pressure", "line_pressure", "flow", "velocity")


def bits(solution: hydro.Solution) -> bytes:
    return b"".join(
        getattr(line, name).si.tobytes() for line in solution.lines for name in SERIES
    )


@pytest.fixture(scope="module")
def broken_layouts(bench: hydro.Layout) -> list[hydro.Layout]:
    """The bench with one fault of each kind, and with several."""
    sound = bench.without_faults()
    spray = hydro.Outlet(flow=1.2 * gpm, at=30 * psi)
    faults: list[hydro.Fault] = [
        hydro.head_off("row 1", 2),
        hydro.riser_sheared("row 2", 7),
        hydro.nozzle_missing("row 1", 3, bore=0.3 * inch),
        hydro.clogged("row 2", 1, 0.6),
        hydro.worn("row 1", 10, 0.25),
        hydro.wrong_outlet("row 1", 5, spray),
        hydro.capped("row 2", 4),
        hydro.leak("row 1", 100 * ft, 3 * gpm, 30 * psi),
        hydro.line_cut("row 2", 300 * ft),
        hydro.valve_part_closed("manifold", 40),
    ]
    layouts = [sound.with_fault(fault) for fault in faults]
    layouts += [sound.with_fault(hydro.end_open("row 1")), sound, sound.with_faults(faults)]
    return layouts


@pytest.fixture(scope="module")
def solved(broken_layouts: list[hydro.Layout]) -> list[bytes]:
    found = [bits(hydro.solve(layout)) for layout in broken_layouts]
    assert len(set(found)) == len(found)
    return found


@pytest.fixture
def nobody_is_made_to_yield() -> Iterator[None]:
    """Only a thread that lets go of the interpreter lets others run."""
    interval = sys.getswitchinterval()
    sys.setswitchinterval(1000)  # s
    yield
    sys.setswitchinterval(interval)


def test_other_threads_run_while_a_layout_is_solved(
    layout: Callable[..., hydro.Layout], nobody_is_made_to_yield: None
) -> None:
    large = layout("40 psi", 200_000)
    beats = 0
    moved = threading.Event()
    finished = threading.Event()

    def work() -> None:
        # A busy machine may not run the other thread during one solve, but during one of many.
        for _ in range(50):
            before = beats
            hydro.solve(large)
            if beats > before:
                moved.set()
                break
        finished.set()

    worker = threading.Thread(target=work)
    worker.start()
    while not finished.is_set():
        beats += 1
        time.sleep(0)  # lets go
    worker.join()
    assert moved.is_set()


def test_threads_find_the_same(broken_layouts: list[hydro.Layout], solved: list[bytes]) -> None:
    threads, solves = 8, 1000
    together = threading.Barrier(threads)
    differing: list[int] = []
    done: list[int] = []

    def work(first: int) -> None:
        together.wait()
        for number in range(first, first + solves):
            which = number % len(broken_layouts)
            if bits(hydro.solve(broken_layouts[which])) != solved[which]:
                differing.append(which)
        done.append(first)

    workers = [threading.Thread(target=work, args=(first,)) for first in range(threads)]
    for worker in workers:
        worker.start()
    for worker in workers:
        worker.join()
    assert differing == [] and sorted(done) == list(range(threads))


def test_processes_find_the_same(broken_layouts: list[hydro.Layout], solved: list[bytes]) -> None:
    spawn = multiprocessing.get_context("spawn")
    with concurrent.futures.ProcessPoolExecutor(2, mp_context=spawn) as pool:
        of_futures = list(pool.map(hydro.solve, broken_layouts, chunksize=4))
        assert list(map(bits, of_futures)) == solved
        assert [solution.layout for solution in of_futures] == broken_layouts

        # What is raised there arrives here as it is.
        with pytest.raises(hydro.InvalidInput) as refused:
            pool.submit(broken_layouts[0].with_fault, hydro.head_off("row 9", 1)).result()
        assert '"row 9"' in str(refused.value) and refused.value.problems[0].key
        with pytest.raises(hydro.NotSolved) as unfinished:
            pool.submit(hydro.solve, broken_layouts[0], newton_steps=0).result()
        assert unfinished.value.unfinished.layout == broken_layouts[0]
    with spawn.Pool(2) as workers:
        assert list(map(bits, workers.map(hydro.solve, broken_layouts))) == solved


def test_joblib_finds_the_same(broken_layouts: list[hydro.Layout], solved: list[bytes]) -> None:
    joblib = pytest.importorskip("joblib")
    jobs = [joblib.delayed(hydro.solve)(layout) for layout in broken_layouts]
    for backend in ("loky", "threading"):
        found = joblib.Parallel(n_jobs=2, backend=backend)(jobs)
        assert list(map(bits, found)) == solved


def test_errors_survive_pickle(bench: hydro.Layout) -> None:
    with pytest.raises(hydro.InvalidInput) as refused:
        bench.with_faults([hydro.head_off("row 9", 1), hydro.capped("row 1", 99)])
    again = pickle.loads(pickle.dumps(refused.value))
    assert type(again) is hydro.InvalidInput and str(again) == str(refused.value)
    told = [problem.text() for problem in refused.value.problems]
    assert len(told) == 2 and [problem.text() for problem in again.problems] == told

    with pytest.raises(hydro.NotSolved) as unfinished:
        hydro.solve(bench, newton_steps=0)
    reached = pickle.loads(pickle.dumps(unfinished.value))
    assert type(reached) is hydro.NotSolved and str(reached) == str(unfinished.value)
    assert bits(reached.unfinished) == bits(unfinished.value.unfinished)
    assert bits(reached.unfinished) != bits(hydro.solve(bench))
