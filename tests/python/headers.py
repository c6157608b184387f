"""What the public C++ headers declare, by their text, which clang-format keeps in one form."""

import re
from functools import cache
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]


@cache
def public_headers() -> tuple[Path, ...]:
    """Those that are installed."""
    folder = ROOT / "hydro"
    listed = re.findall(r"^ +([\w/]+\.hpp)$", (folder / "CMakeLists.txt").read_text(), re.M)
    assert listed
    made = folder / "version.hpp.in"  # of which CMake makes version.hpp
    return (made, *(folder / name for name in listed if name != "hydro.hpp"))


@cache
def text_of_headers() -> str:
    """All of them, without comments and directives."""
    text = "\n".join(header.read_text() for header in public_headers())
    return re.sub(r"//.*|^#.*", "", text, flags=re.M)


def declared_in_namespace() -> set[str]:
    """Names at the beginning of a line: types, functions, constants of namespaces."""
    text = re.sub(r"^ .*\n", "", text_of_headers(), flags=re.M)  # what is inside of something
    types = re.findall(r"^(?:struct|class|enum class) (\w+)", text, re.M)
    types += re.findall(r"^using (\w+) =", text, re.M)
    constants = re.findall(r"^inline constexpr [\w:<> ]+? (\w+)(?: =|\{)", text, re.M)
    functions = re.findall(r"^(?!using|struct|class|HYDRO)[\w:<>,& ]+ [&*]?(\w+)\(", text, re.M)
    return {*types, *constants, *functions}


def macros() -> set[str]:
    """Those that a header leaves to whoever includes it."""
    text = "\n".join(header.read_text() for header in public_headers())
    defined = re.findall(r"^#define (\w+)", text, re.M)
    return set(defined) - set(re.findall(r"^#undef (\w+)", text, re.M))


def body_of(name: str) -> str:
    form = rf"^(?:struct|class) {name} (?:: [^{{]*)?\{{\n(.*?)^\}};"
    found = re.search(form, text_of_headers(), re.M | re.S)
    assert found, name
    return found[1]


def structs() -> list[str]:
    """Those with fields or methods of their own."""
    return re.findall(r"^(?:struct|class) (\w+) (?:: [^{]*)?\{", text_of_headers(), re.M)


def members_of(name: str) -> tuple[list[str], list[str]]:
    """Public fields and methods of a struct or class, in their order."""
    public = re.split(r"^ private:", body_of(name), flags=re.M)[0]
    lines = [line for line in public.splitlines() if re.match(r"  [\w\[]", line)]
    fields, methods = [], []
    for line in lines:
        if re.match(r"  (using|explicit|static|friend|template|class|struct)\b", line):
            continue
        if "operator" in line:
            continue
        if method := re.match(r"  (?:constexpr )?[\w:<>,&* ]+? [&*]?(\w+)\(", line):
            methods.append(method[1])
        elif field := re.match(r"  [\w:<>,&* ]+? (\w+)( =|;)", line):
            fields.append(field[1])
    return fields, methods


def fields_of(name: str) -> list[str]:
    return members_of(name)[0]
