# SPDX-License-Identifier: MIT
"""How long the functions of a source file are: lines from the signature to the closing brace.

C++, GLSL and JavaScript are read as braces after a parameter list; what a lambda, a callback or a
local class holds counts with the function around it, and once more for itself when it is a function
of its own. Shell and Python are read by their own rules.
"""

import ast
import re
from bisect import bisect_left
from typing import NamedTuple

CONTROL = {"if", "for", "while", "switch", "catch", "constexpr", "return", "with"}
TOKENS = re.compile(
    r"""//[^\n]* | /\*.*?\*/ | R"(?P<mark>[^(\s]*)\(.*?\)(?P=mark)" | "(?:\\.|[^"\\\n])*"
      | '(?:\\.|[^'\\\n])*' | `(?:\\.|[^`\\])*`""",
    re.S | re.X,
)


class Function(NamedTuple):
    name: str
    line: int
    lines: int


def blanked(source: str, javascript: bool) -> str:
    """The source with comments and literals turned to blanks; line breaks stay."""

    def blank(match: re.Match) -> str:
        text = match.group(0)
        # A digit separator is no quotation mark.
        if text[0] == "'" and not javascript and source[match.start() - 1].isalnum():
            return text
        return re.sub(r"[^\n]", " ", text)

    if not javascript:
        source = re.sub(r"(?<=[0-9a-fA-F])'(?=[0-9a-fA-F])", "_", source)
    return TOKENS.sub(blank, source)


def opening_of(code: str, closing: int) -> int:
    """Where the parenthesis that closes at `closing` opens."""
    depth = 0
    for at in range(closing, -1, -1):
        depth += (code[at] == ")") - (code[at] == "(")
        if depth == 0:
            return at
    return 0


def head_of(code: str, brace: int) -> tuple[str, int] | None:
    """Name and place of the function whose body opens at `brace`; None when it is no function's."""
    start = max(code.rfind(stop, 0, brace) for stop in ";{}") + 1
    head = code[start:brace].rstrip()
    if head.endswith("=>"):  # a JavaScript arrow
        return ("=>", start + len(head) - len(head.lstrip()))
    # "…) const noexcept -> T" or a constructor's list of members; the parameter list comes first.
    first = re.search(r"(~?[\w$]+|operator\s*[^\s\w(]+|\])\s*(\()", head)
    if not first or first.group(1) in CONTROL or re.match(r"\s*(?:else|do|try)\b", head):
        return None
    if re.match(r"\s*(?:if|for|while|switch|catch|return|extern|namespace|struct|enum)\b", head):
        return None
    if re.search(r"=\s*$|[=(,]\s*\w*$", head) and "]" != first.group(1):
        return None  # an initialiser in braces, not a body
    return (first.group(1), start + len(code[start:brace]) - len(code[start:brace].lstrip()))


def in_braces(source: str, javascript: bool = False) -> list[Function]:
    code = blanked(source, javascript)
    breaks = [i for i, c in enumerate(code) if c == "\n"]
    found, open_heads = [], []
    for at in (m.start() for m in re.finditer(r"[{}]", code)):
        if code[at] == "{":
            open_heads.append(head_of(code, at))
            continue
        head = open_heads.pop() if open_heads else None
        if head:
            first, last = bisect_left(breaks, head[1]), bisect_left(breaks, at)
            found.append(Function(head[0], first + 1, last - first + 1))
    return found


def in_python(source: str) -> list[Function]:
    return [
        Function(node.name, node.lineno, node.end_lineno - node.lineno + 1)
        for node in ast.walk(ast.parse(source))
        if isinstance(node, (ast.FunctionDef, ast.AsyncFunctionDef))
    ]


def in_shell(source: str) -> list[Function]:
    found, start = [], None
    for number, line in enumerate(source.splitlines(), 1):
        if match := re.match(r"(\w+)\(\) \{", line):
            start = (match.group(1), number)
            if line.rstrip().endswith("}"):
                found.append(Function(*start, 1))
                start = None
        elif line == "}" and start:
            found.append(Function(*start, number - start[1] + 1))
            start = None
    return found


def functions_of(path: str, source: str) -> list[Function]:
    if path.endswith(".py"):
        return in_python(source)
    if path.endswith((".js", ".mjs")):
        return in_braces(source, javascript=True)
    if path.endswith((".cpp", ".hpp", ".vert", ".frag", ".glsl")):
        return in_braces(source)
    return in_shell(source)
