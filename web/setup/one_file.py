#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""one_file.py SITE FILE.html writes the page in SITE as a single file, for a disk or an attachment.

Style and scripts stand in the page, the two parts of the program as packed text (program.js unpacks
them). What needs a host stays out: the service worker, the manifest, the calculation door.
"""

import base64
import gzip
import hashlib
import re
import sys
from pathlib import Path

IMPORT = re.compile(r'^import \{([^}]*)\} from "\./([\w.]+)";\n?', re.M)
LATER = re.compile(r'\bimport\("\./([\w.]+)"\)')
EXPORT = re.compile(r"^export (?:async )?(?:function|class|const) (\w+)", re.M)
LEFT_OUT = re.compile(r'<(?:link rel="(?:manifest|apple-touch-icon|preload|icon|stylesheet)"|script src)'
                      r'[^>]*>(?:</script>)?\n?')
POLICY = re.compile(r'(http-equiv="Content-Security-Policy" content=")[^"]*')


def bundled(site: Path, name: str, done: list[str]) -> str:
    """The module and, before it, what it imports; each keeps its names to itself."""
    if name in done:
        return ""
    done.append(name)
    source = (site / name).read_text()
    names = [found[2] for found in IMPORT.finditer(source)]
    names += [found[1] for found in LATER.finditer(source)]
    before = "".join(bundled(site, other, done) for other in names)
    body = IMPORT.sub(lambda found: f"const {{{found[1]}}} = {holder(found[2])};\n", source)
    body = LATER.sub(lambda found: f"Promise.resolve({holder(found[1])})", body)
    given = ", ".join(EXPORT.findall(source))
    body = re.sub(r"^export ", "", body, flags=re.M)
    return f"{before}const {holder(name)} = (() => {{\n{body}\nreturn {{ {given} }};\n}})();\n"


def holder(name: str) -> str:
    return "from_" + name.split(".")[0]


def inline(tag: str, text: str) -> tuple[str, str]:
    """The element, and what the policy must allow: exactly this text."""
    safe = text.replace("</script", "<\\/script")
    mark = base64.b64encode(hashlib.sha256(safe.encode()).digest()).decode()
    return f"<{tag}>{safe}</{tag.split()[0]}>\n", f"'sha256-{mark}'"


def carried(site: Path, name: str) -> str:
    packed = base64.b64encode(gzip.compress((site / name).read_bytes(), 9, mtime=0)).decode()
    return f'<script type="text/plain" id="file:{name}">{packed}</script>\n'


def one_file(site: Path) -> str:
    page = LEFT_OUT.sub("", (site / "index.html").read_text())
    style, style_mark = inline("style", (site / "style.css").read_text())
    program, program_mark = inline("script", (site / "shimlight.js").read_text())
    modules, modules_mark = inline("script type=\"module\"", bundled(site, "loader.js", []))
    icon = base64.b64encode((site / "icons/shimlight.svg").read_bytes()).decode()
    policy = (f"default-src 'none'; script-src {program_mark} {modules_mark} 'wasm-unsafe-eval'; "
              f"style-src {style_mark}; img-src data: blob:; base-uri 'none'; form-action 'none'")
    page = POLICY.sub(lambda found: found[1] + policy, page)
    head = f'<link rel="icon" type="image/svg+xml" href="data:image/svg+xml;base64,{icon}">\n{style}'
    files = "".join(carried(site, name) for name in ("shimlight.wasm", "shimlight-rest.wasm"))
    page = page.replace("</head>", head + "</head>", 1)
    return page.replace("</body>", files + program + modules + "</body>", 1)


def main() -> None:
    site, target = map(Path, sys.argv[1:3])
    target.write_text(one_file(site))


if __name__ == "__main__":
    main()
