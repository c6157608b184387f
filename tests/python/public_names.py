"""Every public name of C++ and Python, a line each, as tests/public_names.txt keeps them.

    PYTHONPATH=BUILD/python python3 tests/python/public_names.py > tests/public_names.txt
"""

from headers import declared_in_namespace, macros, members_of, structs

import hydro


def public_names() -> list[str]:
    names = {f"C++ {name}" for name in declared_in_namespace() | macros()}
    for kind in structs():
        fields, methods = members_of(kind)
        names |= {f"C++ {kind}.{member}" for member in (*fields, *methods)}
    for name in hydro.__all__:
        names.add(f"Python {name}")
        thing = getattr(hydro, name)
        if isinstance(thing, type):
            names |= {f"Python {name}.{key}" for key in vars(thing) if not key.startswith("_")}
    return sorted(names)


if __name__ == "__main__":
    print("\n".join(public_names()))
