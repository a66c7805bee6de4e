#!/usr/bin/env python3
"""Times the built server as an editor sees it, beside a bare server that does nothing but speak the protocol.

Build first: mvn -DskipTests package
usage: measure.py [--starts N] [--edits N] [--lines 100,1000,10000] [--json FILE]

Prints medians [ms] and the resident memory after the run [MiB]. What a server does not offer is left out.
Python 3 with its standard library alone; Linux, for the memory.
"""

import argparse
import json
import os
import pathlib
import statistics
import subprocess
import sys
import tempfile
import time

HERE = pathlib.Path(__file__).resolve().parent
BUILT = HERE.parent.parent / "app/target/chainwright"
BENCH = HERE.parent / "target"
URI = "file:///measured/long.chain"


class Server:
    """One process of a server, spoken to as an editor does."""

    def __init__(self, command):
        self.started = time.perf_counter()
        self.process = subprocess.Popen(
            command, stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL
        )
        self.last_id = 0

    def send(self, message):
        body = json.dumps({"jsonrpc": "2.0", **message}).encode()
        self.process.stdin.write(b"Content-Length: %d\r\n\r\n%s" % (len(body), body))
        self.process.stdin.flush()

    def read(self):
        length = None
        while True:
            line = self.process.stdout.readline()
            if not line:
                raise EOFError("the server has ended")
            if line == b"\r\n":
                return json.loads(self.process.stdout.read(length))
            name, value = line.split(b":", 1)
            if name.lower() == b"content-length":
                length = int(value)

    def tell(self, method, params):
        self.send({"method": method, "params": params})

    def ask(self, method, params):
        self.last_id += 1
        self.send({"id": self.last_id, "method": method, "params": params})
        while True:
            message = self.read()
            if message.get("id") == self.last_id and "method" not in message:
                if "error" in message:
                    raise RuntimeError(f"{method}: {message['error']}")
                return message["result"]

    def await_findings(self, version):
        while True:
            message = self.read()
            if message.get("method") == "textDocument/publishDiagnostics":
                if message["params"].get("version") == version:
                    return message["params"]["diagnostics"]

    def initialize(self):
        capabilities = {
            "textDocument": {
                "publishDiagnostics": {"relatedInformation": True, "versionSupport": True},
                "hover": {"contentFormat": ["markdown"]},
                "semanticTokens": {
                    "requests": {}, "tokenTypes": [], "tokenModifiers": [], "formats": []
                },
                "documentSymbol": {"hierarchicalDocumentSymbolSupport": True},
            }
        }
        result = self.ask(
            "initialize", {"processId": None, "rootUri": None, "capabilities": capabilities}
        )
        self.tell("initialized", {})
        return result["capabilities"]

    def resident_mib(self):
        with open(f"/proc/{self.process.pid}/status") as status:
            for line in status:
                if line.startswith("VmRSS:"):
                    return int(line.split()[1]) / 1024

    def end(self):
        self.ask("shutdown", None)
        self.tell("exit", None)
        self.process.wait(timeout=20)


def chains(lines):
    """A text of so many lines: ordinary chains, each with numbers of its own so that nothing can be reused,
    and two faults, a stray sign and a missing unit, in the last."""
    text = ['session "Measured" {', "  sample-rate 48 kHz", "}", ""]
    number = 0
    while len(text) + 12 <= lines - 12:
        number += 1
        text += [
            f'chain voice-{number} "Voice {number}" {{',
            "  source  lead-vocal",
            "  to      mix  fader -3 dB",
            "",
            f"  high-pass   {60 + number % 11} Hz 18 dB/oct",
            f"  bell        {3000 + number % 131} Hz  -2.5 dB  Q 2.2  # the held vowel",
            "    > Only here, in the second verse.",
            f"  de-ess      band {5500 + number % 97} to 9000 Hz  threshold -30 dBFS  max-reduction 6 dB",
            f"  compressor  threshold -21 dBFS  ratio 3:1  attack 12 ms  release {90 + number % 37} ms  knee 6 dB",
            f"  high-shelf  {11500 + number % 113} Hz  +2 dB",
            "}",
            "",
        ]
    text += ["# The last chains."] * (lines - 12 - len(text))
    text += [
        "chain last {",
        "  source  lead-vocal",
        "  to      mix",
        "",
        "  high-pass   80 Hz 12 dB/oct",
        "  bell        3.1 kHz;  -2.5 dB  Q 2.2",
        "  bell        300  -2 dB  Q 1.2",
        "}",
        "",
        "bus mix {",
        "  loudness -16 LUFS",
        "}",
        "",
    ]
    assert len(text) == lines + 1  # The last is what follows the last line's end.
    return "\n".join(text)


def timed(action):
    start = time.perf_counter()
    result = action()
    return (time.perf_counter() - start) * 1000, result


def open_text(server, text):
    document = {"uri": URI, "languageId": "chain", "version": 1, "text": text}
    server.tell("textDocument/didOpen", {"textDocument": document})
    findings = server.await_findings(1)
    if not findings:
        raise RuntimeError("the text has faults, but the server finds none")


def measure_starts(command, text, count):
    to_initialize, to_findings = [], []
    for _ in range(count):
        server = Server(command)
        server.initialize()
        to_initialize.append((time.perf_counter() - server.started) * 1000)
        open_text(server, text)
        to_findings.append((time.perf_counter() - server.started) * 1000)
        server.end()
    return {
        "start to initialize": statistics.median(to_initialize),
        "start to findings": statistics.median(to_findings),
    }


def keystroke(server, line, version):
    """Types and takes back a letter in a word near the end."""
    is_typing = version % 2 == 0
    place = {"line": line, "character": 6}
    after = {"line": line, "character": 7}
    change = {
        "range": {"start": place, "end": place if is_typing else after},
        "text": "l" if is_typing else "",
    }
    server.tell(
        "textDocument/didChange",
        {"textDocument": {"uri": URI, "version": version}, "contentChanges": [change]},
    )
    server.await_findings(version)


def measure_session(command, text, edits):
    server = Server(command)
    offered = server.initialize()
    open_text(server, text)
    lines = text.count("\n")
    here = {"textDocument": {"uri": URI}, "position": {"line": lines - 8, "character": 4}}
    whole = {"textDocument": {"uri": URI}}
    layout = {**whole, "options": {"tabSize": 8, "insertSpaces": True}}
    found = {}
    times = []
    for edit in range(edits):
        times.append(timed(lambda: keystroke(server, lines - 6, 2 + edit))[0])
    found["keystroke to findings"] = statistics.median(times)
    found["keystroke, slowest of 20"] = sorted(times)[int(len(times) * 0.95)]
    header = {**here, "position": {"line": lines - 12, "character": 8}}
    requests = {
        "hover chain": ("hoverProvider", "textDocument/hover", header),
        "hover": ("hoverProvider", "textDocument/hover", here),
        "completion": ("completionProvider", "textDocument/completion", here),
        "format": ("documentFormattingProvider", "textDocument/formatting", layout),
        "tokens": ("semanticTokensProvider", "textDocument/semanticTokens/full", whole),
        "outline": ("documentSymbolProvider", "textDocument/documentSymbol", whole),
    }
    for name, (capability, method, params) in requests.items():
        if offered.get(capability):
            first, answer = timed(lambda: server.ask(method, params))
            if not answer:
                raise RuntimeError(f"{name}: the server has no answer")
            times = [timed(lambda: server.ask(method, params))[0] for _ in range(max(5, edits // 4))]
            found[f"{name}, first"] = first
            found[name] = statistics.median(times)
    found["resident MiB"] = server.resident_mib()
    server.end()
    return found


def bare_command(folder):
    """The bare server, started as the built one is: same flags, an archive of its own."""
    java = os.path.join(os.environ["JAVA_HOME"], "bin/java") if os.environ.get("JAVA_HOME") else "java"
    jars = [str(BUILT / "lib/chainwright.jar")]
    jars += [str(jar) for jar in BENCH.glob("bench-*.jar")]
    if len(jars) < 2:
        sys.exit("measure: build first: mvn -DskipTests package")
    main = ["-cp", ":".join(jars), "chainwright.bench.BareServer"]
    classes, archive = f"{folder}/bare.classes", f"{folder}/bare.jsa"
    rehearsal = Server([java, "-Xshare:off", f"-XX:DumpLoadedClassList={classes}", *main])
    rehearsal.initialize()
    open_text(rehearsal, chains(100))
    rehearsal.end()
    flags = ["-XX:+UseSerialGC", "-Xms48m", "-Xmn16m", "-Xmx192m", "-XX:-UsePerfData", "-XX:TieredStopAtLevel=1"]
    flags += ["-XX:CompileThresholdScaling=0.5", "-XX:C1MaxInlineSize=28"]
    pages = pathlib.Path("/sys/kernel/mm/transparent_hugepage/enabled")
    if pages.exists() and "[never]" not in pages.read_text():
        flags += ["-XX:+UseTransparentHugePages"]
    dump = ["-Xshare:dump", f"-XX:SharedClassListFile={classes}", f"-XX:SharedArchiveFile={archive}"]
    subprocess.run([java, *flags, *dump, *main[:2]], check=True, capture_output=True)
    return [java, *flags, "-Xlog:disable", "-Xshare:auto", f"-XX:SharedArchiveFile={archive}", *main]


def growth(figures, sizes):
    """Says whether cost grows with the length or faster: the time that is added for each line added,
    from one size to the next, over the same for the sizes before. Linear is 1; a fixed cost is 0."""
    if len(sizes) < 3:
        return
    small, middle, large = sizes[-3:]
    print(f"\ncost of a further line, {middle} to {large} over {small} to {middle}; above 1 it grows faster")
    for row in ("start to findings", "keystroke to findings", "format", "tokens", "outline"):
        a, b, c = (figures[f"chainwright {lines}"].get(row) for lines in (small, middle, large))
        if None not in (a, b, c) and b > a:
            ratio = ((c - b) / (large - middle)) / ((b - a) / (middle - small))
            print(f"{row:26}{ratio:.2f}  ({1000 * (c - b) / (large - middle):.2f} us a line)")


def main():
    parser = argparse.ArgumentParser(description=__doc__.split("\n")[0])
    parser.add_argument("--starts", type=int, default=15)
    parser.add_argument("--edits", type=int, default=100)
    parser.add_argument("--lines", default="100,1000,10000")
    parser.add_argument("--json", type=pathlib.Path, help="also write the figures to a file")
    options = parser.parse_args()
    figures = {}
    with tempfile.TemporaryDirectory() as folder:
        commands = {
            "chainwright": [str(BUILT / "bin/chainwright"), "lsp"],
            "bare": bare_command(folder),
        }
        # One start that nobody times: the archive is made in the background of the first.
        measure_starts(commands["chainwright"], chains(100), 1)
        sizes = [int(lines) for lines in options.lines.split(",")]
        for lines in sizes:
            for name, command in commands.items():
                text = chains(lines)
                found = measure_starts(command, text, options.starts)
                found |= measure_session(command, text, options.edits)
                figures[f"{name} {lines}"] = found
    columns = list(figures)
    rows = list(dict.fromkeys(row for column in columns for row in figures[column]))
    width = max(map(len, columns)) + 2
    print(" " * 26 + "".join(f"{column:>{width}}" for column in columns))
    for row in rows:
        cells = [f"{figures[c][row]:.1f}" if row in figures[c] else "-" for c in columns]
        print(f"{row:26}" + "".join(f"{cell:>{width}}" for cell in cells))
    growth(figures, sizes)
    if options.json:
        options.json.write_text(json.dumps(figures, indent=2) + "\n")


if __name__ == "__main__":
    main()
