#!/usr/bin/python3
"""Renders and measures a take of two hours beside one of two minutes, through the built launcher with a small heap.

usage: server/bench/memory/long-take.py [HEAP [HOURS]]     HEAP as Java writes it, 64m unless given; 2 hours
Needs: mvn -DskipTests package, and about 4.5 GB of disk for each hour in the folder for temporary files (TMPDIR).

Prints a table in Markdown: seconds of work and the most that was resident at once, as the system counts it. The take is
stereo, 48 kHz, floats of 32 bits: over 2 GB in two hours. The render has 64 bits, over 4 GB, which only RF64 can hold, and is
measured in turn. Ends with 1 if something fails.
"""

import array
import os
import pathlib
import random
import struct
import sys
import tempfile
import time

RATE = 48000
CHANNELS = 2
CHAIN = """chain long {
  high-pass   70 Hz  24 dB/oct
  compressor  threshold -24 dBFS  ratio 3:1  attack 8 ms  release 120 ms
  bell        3.1 kHz  -2 dB  Q 1.8
  reverb      1.4 s  blend 15 %
}
"""

home = pathlib.Path(__file__).resolve().parents[2] / "app" / "target" / "chainwright"
heap = sys.argv[1] if len(sys.argv) > 1 else "64m"
hours = float(sys.argv[2]) if len(sys.argv) > 2 else 2


def write_take(path, seconds):
    """Ten seconds of noise between -20 and -40 dBFS again and again; an RF64 header (EBU Tech 3306)."""
    noise = random.Random(11)
    piece = array.array("f")
    for frame in range(10 * RATE):
        level = 0.1 if frame // (RATE // 2) % 2 else 0.01
        for _ in range(CHANNELS):
            piece.append(level * noise.uniform(-1, 1))
    if sys.byteorder == "big":
        piece.byteswap()
    data = len(piece) * 4 * (seconds // 10)
    with open(path, "wb") as file:
        file.write(b"RF64" + struct.pack("<I", 0xFFFFFFFF) + b"WAVE")
        frames = data // 4 // CHANNELS
        file.write(b"ds64" + struct.pack("<IQQQI", 28, data + 72, data, frames, 0))
        file.write(b"fmt " + struct.pack("<IHHIIHH", 16, 3, CHANNELS, RATE, RATE * CHANNELS * 4, CHANNELS * 4, 32))
        file.write(b"data" + struct.pack("<I", 0xFFFFFFFF))
        for _ in range(seconds // 10):
            file.write(piece.tobytes())


def run(folder, *words):
    """Runs the launcher; returns the seconds it took and the most that was resident [MiB]."""
    start = time.monotonic()
    child = os.fork()
    if child == 0:
        null = os.open(os.devnull, os.O_WRONLY)
        errors = os.open(folder / "errors", os.O_WRONLY | os.O_CREAT | os.O_TRUNC)
        os.dup2(null, 1)
        os.dup2(errors, 2)
        os.environ["JAVA_TOOL_OPTIONS"] = "-Xmx" + heap
        launcher = str(home / "bin" / "chainwright")
        os.execv(launcher, [launcher, *map(str, words)])
    _, status, used = os.wait4(child, 0)
    if status != 0:
        sys.exit(f"`{' '.join(map(str, words))}` failed:\n" + (folder / "errors").read_text())
    return time.monotonic() - start, used.ru_maxrss / 1024


with tempfile.TemporaryDirectory() as name:
    folder = pathlib.Path(name)
    chain = folder / "long.chain"
    chain.write_text(CHAIN)
    run(folder, "--version")
    while not (home / "lib" / "chainwright.jsa").exists():
        time.sleep(0.5)
    print(f"| heap of at most {heap} | size [GB] | time [s] | resident at most [MiB] |\n|---|---|---|---|")
    for title, seconds in (("2 minutes", 120), (f"{hours:g} hours", int(hours * 3600))):
        take = folder / "take.wav"
        out = folder / "out.wav"
        write_take(take, seconds)
        size = take.stat().st_size / 1e9
        work = [
            ("measure the take", size, ["measure", take]),
            ("render, one pass", 2 * size, ["render", chain, "--take", take, "-o", out, "--force", "--bits", "64f"]),
            ("measure the render", 2 * size, ["measure", out]),
            (
                "render, two passes",
                size,
                ["render", chain, "--take", take, "-o", out, "--force", "--level-match"],
            ),
        ]
        for what, bytes_held, words in work:
            took, resident = run(folder, *words)
            print(f"| {title}: {what} | {bytes_held:.2f} | {took:.0f} | {resident:.0f} |", flush=True)
