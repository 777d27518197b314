#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""site.py FOLDER FILE… puts the page together in FOLDER, and nothing else stays there.

Of the scripts there are the page's (loader.js), the worker's (host.js), each with all that it imports,
and those that come later.

The service worker (sw.js) gets the list of the files a visit needs with a hash of each, the list of
those that are asked for later, and a version of the whole made from all: the same content is the same
version, any change is a new one.
"""

import hashlib
import json
import re
import sys
from pathlib import Path

sys.dont_write_bytecode = True
from bundle import bundle  # noqa: E402

# The rest of the program comes with the first use; only who asks the calculation door on the page
# loads it; the system fetches large icons when the program is installed.
REST = "shimlight-rest.wasm"
LATER = ("library.js", "photos.js", "pictures.js", "report.js")
ASKED_FOR = {REST, *LATER, "report.css", "shimlight-door.wasm"}
ON_DEMAND = {*ASKED_FOR, "icons/shimlight.svg", "icons/icon-512.png", "icons/maskable-512.png"}
VERSION_MARK, LIST_MARK, ASKED_MARK = "__CACHE_VERSION__", "__PRECACHE__", "__ASKED_FOR__"
REST_MARK, LATER_MARK = "__REST_MARK__", "__LATER_MARK__"


def folder_of(file: Path) -> str:
    """Icons keep a folder of their own; the rest lies beside index.html."""
    return "icons/" if file.parent.name == "icons" else ""


def worker(source: str, files: dict[str, bytes]) -> str:
    """The service worker with the list of what it keeps. "./" is the page itself."""
    listed = [
        {"url": "./" if name == "index.html" else name,
         "revision": hashlib.sha256(content).hexdigest()[:16]}
        for name, content in sorted(files.items())
    ]
    whole = hashlib.sha256((json.dumps(listed) + source).encode()).hexdigest()[:16]
    at_first = [file for file in listed if file["url"] not in ON_DEMAND]
    asked_for = [file for file in listed if file["url"] in ASKED_FOR]
    for mark, value in ((VERSION_MARK, whole), (LIST_MARK, json.dumps(at_first)),
                        (ASKED_MARK, json.dumps(asked_for))):
        if mark not in source:
            raise SystemExit(f"sw.js has no place for {mark}")
        source = source.replace(mark, value)
    return source


def as_module(source: str) -> str:
    """What makes the program, as emcc writes it, for import."""
    begin, end = source.find("var createShimlight ="), source.find("\nif (typeof exports")
    if begin < 0 or end < 0:
        raise SystemExit("shimlight.js is not as emcc used to write it")
    return without_loading(source[begin:end]).replace("var", "export const", 1) + "\n"


# How emcc's script would fetch and compile the program; host.js does that (instantiateWasm).
LOADING = (("var scriptDirectory=", "var out=console.log"), ("var wasmBinary;", "var noExitRuntime"),
           ("var dataURIPrefix=", "function createWasm("),
           ("function receiveInstantiationResult(", 'if(Module["instantiateWasm"])'),
           ("instantiateAsync().catch(", "return{}}"))


def without_loading(source: str) -> str:
    for begin, end in LOADING:
        at, to = source.find(begin), source.find(end)
        if not 0 <= at < to:
            raise SystemExit(f"shimlight.js has no {begin} before {end} any more")
        source = source[:at] + source[to:]
    for gone in ("scriptDirectory", "locateFile", "wasmBinary", "instantiateAsync", "readBinary"):
        if gone in source:
            raise SystemExit(f"shimlight.js still needs {gone}")
    return source


def lean(name: str, content: bytes) -> bytes:
    """Scripts and style without their comments and indents, which only people read."""
    if not name.endswith((".js", ".mjs", ".css")) or name == "shimlight.js":
        return content
    text = content.decode()
    if name.endswith(".css"):
        text = re.sub(r"/\*.*?\*/", "", text, flags=re.S)
    else:
        text = re.sub(r"^\s*/\*\*.*?\*/$", "", text, flags=re.S | re.M)
    lines = (line.strip() for line in text.split("\n"))
    return "\n".join(line for line in lines if line and not line.startswith("//")).encode()


def mark_of(content: bytes) -> str:
    """FNV-1a, the same as in program.js."""
    mark = 0x811C9DC5
    for byte in content:
        mark = (mark ^ byte) * 0x01000193 & 0xFFFFFFFF
    return f"{mark:x}"


def stamp(files: dict[str, bytes], name: str, place: str, value: str) -> None:
    source = files[name].decode()
    if place not in source:
        raise SystemExit(f"{name} has no place for {place}")
    files[name] = source.replace(place, value).encode()


def write(folder: Path, files: dict[str, bytes]) -> None:
    for old in sorted(folder.rglob("*"), reverse=True):
        if old.is_file() and old.relative_to(folder).as_posix() not in files:
            old.unlink()
        elif old.is_dir() and not any(old.iterdir()):
            old.rmdir()
    for name, content in files.items():
        target = folder / name
        target.parent.mkdir(parents=True, exist_ok=True)
        if not target.exists() or target.read_bytes() != content:
            target.write_bytes(content)


def main() -> None:
    folder = Path(sys.argv[1])
    files = {folder_of(f) + f.name: lean(f.name, f.read_bytes())
             for f in map(Path, sys.argv[2:])}
    files["shimlight.js"] = as_module(files["shimlight.js"].decode()).encode()
    stamp(files, "program.js", REST_MARK, mark_of(files[REST]))
    later_mark = mark_of(b"".join(files[name] for name in LATER))
    for name in ("program.js", *LATER):
        stamp(files, name, LATER_MARK, later_mark)
    parts = {*bundle(files, "loader.js", LATER), *bundle(files, "host.js")}
    for name in parts:
        del files[name]
    source = files.pop("sw.js", None)
    if source is None:
        raise SystemExit("there is no sw.js among the files")
    files["sw.js"] = worker(source.decode(), files).encode()
    folder.mkdir(parents=True, exist_ok=True)
    write(folder, files)


if __name__ == "__main__":
    main()
