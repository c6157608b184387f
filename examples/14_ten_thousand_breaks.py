"""How much pressure to spare keeps a row at work when a head is knocked off, wherever that is?

10,000 what-ifs, shared among processes: 100 pressures, at each of them 100 heads off in turn. With
the argument "dask" the same runs on a Dask cluster, here of two workers on this machine. Only the
line that makes the executor differs; Client("ADDRESS:8786") there is a cluster of many machines.
"""

import sys
from concurrent.futures import Executor, ProcessPoolExecutor

import numpy as np

import hydro
from hydro import Pressure, ft, gpm, inch, psi

HEADS = 100
row = hydro.Line(
    name="row 1",
    pipe=hydro.Pipe(inside_diameter=2.655 * inch, hazen_williams=150),
    outlet=hydro.Outlet(flow=1.5 * gpm, at=30 * psi, minimum=22 * psi),
    count=HEADS,
    spacing=12 * ft,
    riser=hydro.Riser(height=2 * ft, inside_diameter=0.602 * inch, hazen_williams=150),
)


def out_of_work(layout: hydro.Layout) -> int:
    return len(hydro.check(hydro.solve(layout)).below_minimum)


def stopped_by_breaks(held: Pressure) -> list[int]:
    """How many heads do not work at this pressure: first of the whole row, then with each head off.

    A hundred solves a call, so that they outweigh the sending; and only numbers go back.
    """
    whole = hydro.Layout(hydro.Supply(pressure=held), [row])
    breaks = [whole.with_fault(hydro.head_off("row 1", 1 + i)) for i in range(HEADS)]
    return [out_of_work(layout) for layout in (whole, *breaks)]


def sweep(executor: Executor) -> None:
    held = np.linspace(25, 49.75, 100)
    stopped = np.array(list(executor.map(stopped_by_breaks, held * psi)))
    whole, broken = stopped[:, 0], stopped[:, 1:]

    print("psi held  out of work  at the worst break  that is of head")
    for i in range(0, 100, 10):
        worst = broken[i].argmax()
        print(f"{held[i]:8.1f}  {whole[i]:11}  {broken[i][worst]:18}  {1 + worst:16}")
    enough, ample = held[whole == 0][0], held[broken.max(axis=1) == 0][0]
    print(f"The whole row works from {enough:.2f} psi on, with any one head off from {ample:.2f}:")
    print(f"that takes {ample - enough:.1f} psi to spare.")


if __name__ == "__main__":
    executor: Executor
    if sys.argv[1:] == ["dask"]:
        from distributed import Client

        executor = Client(n_workers=2).get_executor()
    else:
        executor = ProcessPoolExecutor()
    with executor:
        sweep(executor)
