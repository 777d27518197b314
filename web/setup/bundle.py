# SPDX-License-Identifier: MIT
"""One script out of a module and what it imports: a network of long ways is asked once."""

import re

IMPORT = re.compile(r'^import \{([^}]*)\} from "\./([\w.]+)";\n?', re.M)
EXPORT = re.compile(r"^export (?:async )?(?:function|class|const) (\w+)", re.M)


def holder(name: str) -> str:
    return "from_" + name.split(".")[0]


def imported(source: str) -> list[str]:
    return [found[2] for found in IMPORT.finditer(source)]


def needed(files: dict[str, bytes], name: str) -> list[str]:
    """What the module imports and those import, each after what it needs itself."""
    order: list[str] = []
    for other in imported(files[name].decode()):
        order += [one for one in [*needed(files, other), other] if one not in order]
    return order


def names_of(source: str) -> str:
    return ", ".join(EXPORT.findall(source))


def closed(source: str) -> str:
    """A module's body as a call that gives what it exports; its other names stay its own."""
    body = re.sub(r"^export ", "", open_to_holders(source), flags=re.M)
    return f"(() => {{\n{body}\nreturn {{ {names_of(source)} }};\n}})()"


def open_to_holders(source: str) -> str:
    return IMPORT.sub(lambda found: f"const {{{found[1]}}} = {holder(found[2])};\n", source)


def bundle(files: dict[str, bytes], name: str, others: tuple[str, ...] = ()) -> list[str]:
    """Puts what `name` needs into it and lets `others` import that from it. Gives what it took in."""
    inner = needed(files, name)
    wanted: set[str] = set()
    for other in others:
        source = files[other].decode()
        for found in IMPORT.finditer(source):
            if found[2] in inner:
                wanted.update(one.strip() for one in found[1].split(",") if one.strip())
        files[other] = IMPORT.sub(
            lambda found: f'import {{{found[1]}}} from "./{name if found[2] in inner else found[2]}";\n',
            source).encode()
    text = ""
    for one in inner:
        source = files[one].decode()
        text += f"const {holder(one)} = {closed(source)};\n"
        given = sorted(wanted.intersection(EXPORT.findall(source)))
        if given:
            text += f"export const {{ {', '.join(given)} }} = {holder(one)};\n"
    # What others import under this name is not declared twice.
    body = IMPORT.sub(lambda found: own_names(found, wanted), files[name].decode())
    files[name] = (text + body).encode()
    return inner


def own_names(found: re.Match[str], given: set[str]) -> str:
    names = [one.strip() for one in found[1].split(",")]
    left = [one for one in names if one and one not in given]
    return f"const {{ {', '.join(left)} }} = {holder(found[2])};\n" if left else ""
