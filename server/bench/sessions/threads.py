#!/usr/bin/python3
"""Renders a session with one thread and with several, in turns, through the built launcher.

usage: server/bench/sessions/threads.py [SECONDS [ROUNDS [THREADS]]]     180 s, 5 rounds and 2 threads unless given
Needs: mvn -DskipTests package; Debian's python3-numpy; 2 MB of disk for each second in the folder for temporary
files (TMPDIR).

Eight seeded takes, mono, 48 kHz, 24 bits, through 41 stages of chains and buses, two of them reverbs, into a mix with a
true-peak limiter. Prints a table in Markdown: medians, least and most of the time on the clock, of the processor's time, and
how many times faster than real time. Says how busy the machine is, since two threads show nothing where another program has
the second core. Ends with 1 if something fails, or if the renders are not the same, bit for bit.
"""

import filecmp
import os
import pathlib
import statistics
import sys
import tempfile
import time
import wave

import numpy

RATE = 48000
SESSION = """session "Rope ferry" { sample-rate 48 kHz }

chain lead {
  take "lead.wav"
  source lead-vocal
  to voices fader -3 dB
  send hall -14 dB
  high-pass 80 Hz 18 dB/oct
  bell 320 Hz -2.5 dB Q 1.4
  de-ess band 5 kHz to 9 kHz split-band threshold -28 dBFS
  compressor threshold -24 dBFS ratio 3:1 attack 8 ms release 120 ms make-up 3 dB
  saturation tape drive 4 dB oversampling 4
  high-shelf 9 kHz +2 dB
}

chain second {
  take "second.wav"
  source backing-vocal
  to voices fader -7 dB
  send hall -12 dB
  pan -30 %
  high-pass 120 Hz 18 dB/oct
  compressor threshold -28 dBFS ratio 4:1 attack 6 ms release 100 ms
  bell 2.8 kHz -2 dB Q 1.2
  high-shelf 8 kHz +1.5 dB
}

chain plucked {
  take "plucked.wav"
  to mix fader -8 dB
  send room -16 dB
  pan 35 %
  high-pass 90 Hz 12 dB/oct
  bell 220 Hz -3 dB Q 1
  compressor threshold -22 dBFS ratio 2.5:1 attack 15 ms release 150 ms
}

chain drone {
  take "drone.wav"
  to mix fader -10 dB
  send hall -10 dB
  pan -45 %
  high-pass 110 Hz 12 dB/oct
  bell 1.2 kHz -2 dB Q 0.8
  dynamic-bell 3.2 kHz threshold -34 dBFS
}

chain low {
  take "low.wav"
  to mix fader -6 dB
  high-pass 35 Hz 24 dB/oct
  compressor threshold -24 dBFS ratio 4:1 attack 20 ms release 180 ms make-up 2 dB
  saturation transformer drive 6 dB oversampling 4
  bell 90 Hz +2 dB Q 1
}

chain beat {
  take "beat.wav"
  to drums fader -4 dB
  gate threshold -42 dBFS
  bell 65 Hz +3 dB Q 1.2
  clipper ceiling -3 dBFS
}

chain brushes {
  take "brushes.wav"
  to drums fader -8 dB
  pan 20 %
  high-pass 150 Hz 12 dB/oct
  compressor threshold -26 dBFS ratio 3:1 attack 10 ms release 90 ms
}

chain shaker {
  take "shaker.wav"
  to drums fader -12 dB
  send room -14 dB
  pan -60 %
  high-pass 150 Hz 12 dB/oct
  high-shelf 10 kHz -2 dB
}

bus voices {
  to mix
  compressor threshold -20 dBFS ratio 2:1 attack 15 ms release 150 ms
  bell 4.5 kHz +1 dB Q 1
}

bus drums {
  to mix
  send room -12 dB
  compressor threshold -20 dBFS ratio 2:1 attack 25 ms release 120 ms
  saturation tape drive 3 dB oversampling 4
}

bus hall {
  to mix fader -4 dB
  high-pass 150 Hz 12 dB/oct
  reverb 2.2 s blend 100 %
}

bus room {
  to mix fader -6 dB
  reverb 0.5 s blend 100 %
}

bus mix {
  compressor threshold -18 dBFS ratio 1.5:1 attack 30 ms release 200 ms
  true-peak-limiter ceiling -1 dBTP
}
"""


def notes(noise, seconds, pitches, every, decay, harmonics):
    """Notes one after the other: a fundamental and harmonics that fall by 6 dB an octave and die away."""
    sound = numpy.zeros(seconds * RATE)
    length = int(every * RATE)
    t = numpy.arange(length) / RATE
    for start in range(0, len(sound) - length, length):
        hertz = noise.choice(pitches)
        level = noise.uniform(0.1, 0.3) * numpy.exp(-t / decay) * numpy.minimum(1, t / 0.005)
        for k in range(1, harmonics + 1):
            sound[start : start + length] += level / k * numpy.sin(2 * numpy.pi * hertz * k * t)
    return sound


def hits(noise, seconds, every, decay):
    """White noise that begins hard and dies away."""
    t = numpy.arange(seconds * RATE) % int(every * RATE) / RATE
    return 0.3 * numpy.exp(-t / decay) * noise.uniform(-1, 1, len(t))


def takes(seconds):
    noise = numpy.random.default_rng(5)
    hush = 0.0003 * noise.standard_normal((8, seconds * RATE))
    return {
        "lead": notes(noise, seconds, [220, 247, 262, 330], 0.41, 0.5, 30) + hush[0],
        "second": notes(noise, seconds, [165, 196, 220], 0.63, 0.6, 30) + hush[1],
        "plucked": notes(noise, seconds, [110, 147, 196, 294], 0.22, 0.15, 20) + hush[2],
        "drone": notes(noise, seconds, [130.8, 98], 2.3, 5, 40) + hush[3],
        "low": notes(noise, seconds, [41.2, 49, 55], 0.44, 0.3, 12) + hush[4],
        "beat": notes(noise, seconds, [52], 0.5, 0.08, 4) + hush[5],
        "brushes": hits(noise, seconds, 0.5, 0.1) + hush[6],
        "shaker": hits(noise, seconds, 0.125, 0.02) + hush[7],
    }


def write_take(path, sound):
    whole = numpy.rint(numpy.clip(sound, -1, 1) * 0x7FFFFF).astype("<i4")
    with wave.open(str(path), "wb") as file:
        file.setnchannels(1)
        file.setsampwidth(3)
        file.setframerate(RATE)
        file.writeframes(whole.view(numpy.uint8).reshape(-1, 4)[:, :3].tobytes())


def run(folder, *words):
    """Runs the launcher; returns the seconds on the clock and those of the processor."""
    start = time.monotonic()
    child = os.fork()
    if child == 0:
        os.dup2(os.open(folder / "said", os.O_WRONLY | os.O_CREAT | os.O_TRUNC), 1)
        os.dup2(1, 2)
        os.execv(launcher, [launcher, *map(str, words)])
    _, status, used = os.wait4(child, 0)
    if status != 0:
        sys.exit(f"`{' '.join(map(str, words))}` failed:\n" + (folder / "said").read_text())
    return time.monotonic() - start, used.ru_utime + used.ru_stime


def spread(values):
    return f"{statistics.median(values):.1f} ({min(values):.1f} to {max(values):.1f})"


home = pathlib.Path(__file__).resolve().parents[2] / "app" / "target" / "chainwright"
launcher = str(home / "bin" / "chainwright")
seconds = int(sys.argv[1]) if len(sys.argv) > 1 else 180
rounds = int(sys.argv[2]) if len(sys.argv) > 2 else 5
several = int(sys.argv[3]) if len(sys.argv) > 3 else 2

with tempfile.TemporaryDirectory() as name:
    folder = pathlib.Path(name)
    session = folder / "session.chain"
    session.write_text(SESSION)
    for title, sound in takes(seconds).items():
        write_take(folder / (title + ".wav"), sound)
    run(folder, "--version")
    while not (home / "lib" / "chainwright.jsa").exists():
        time.sleep(0.5)
    used = {1: [], several: []}
    print(f"load before {os.getloadavg()[0]:.2f}, {os.cpu_count()} processors", flush=True)
    for _ in range(rounds):
        for threads, times in used.items():
            out = folder / f"mix{threads}.wav"
            words = ["render", session, "-o", out, "--bits", "32f", "--force", "--as-written", "--threads", threads]
            times.append(run(folder, *words))
        if not filecmp.cmp(folder / "mix1.wav", folder / f"mix{several}.wav", shallow=False):
            sys.exit("the renders differ")
    print(f"load after {os.getloadavg()[0]:.2f}; {seconds} s, {rounds} rounds, the renders the same bit for bit\n")
    print("| threads | clock [s] | processor [s] | times real time |\n|---|---|---|---|")
    for threads, times in used.items():
        clock = [took for took, _ in times]
        print(
            f"| {threads} | {spread(clock)} | {spread([work for _, work in times])} |"
            f" {seconds / statistics.median(clock):.0f} |"
        )
