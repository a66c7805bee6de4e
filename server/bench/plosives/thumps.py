#!/usr/bin/python3
"""Plants thumps in voices and renders them through `plosive-repair` with the built launcher: how far each falls, what else is
touched.

usage: server/bench/plosives/thumps.py tuning|report|RECORDING...     recordings are WAVE files of 16 bits, the first channel
Needs: mvn -DskipTests package; Debian's python3-numpy and python3-scipy.

`tuning` are ten seeded voices on which the detector's figures were chosen, `report` ten others: 12 s each, pulses of 85 to 260 Hz
through three resonances, syllables of 60 to 300 ms, esses, the rumble of a room from -62 to -50 dBFS and its hiss, peaks at
-7 dBFS. Thumps of 28 to 75 Hz and 20 to 70 ms begin up to 60 ms before syllables, at least 0.35 s apart. In a recording they
stand where its level rises by 12 dB. Prints a table in Markdown; places are what is changed where nothing was planted, by how
far the low band falls there at most.
"""

import pathlib
import struct
import subprocess
import sys
import tempfile
import wave

import numpy
import scipy.signal

CHAIN = "chain c { plosive-repair 12 dB }\n"
LEVELS = (-12, -18, -24, -30, -36)


def filtered(kind, hertz, rate, sound):
    return scipy.signal.sosfilt(scipy.signal.butter(2, hertz, kind, fs=rate, output="sos"), sound)


def voice(seed, rate=16000, seconds=12):
    """A voice, and when its syllables begin [s]."""
    noise = numpy.random.default_rng(seed)
    pitch = noise.choice([85, 95, 105, 120, 140, 170, 200, 230, 260]) * noise.uniform(0.95, 1.05)
    frames = seconds * rate
    envelope = numpy.zeros(frames)
    hertz = numpy.full(frames, pitch)
    starts = []
    at = 0.4
    while at < seconds - 0.6:
        length = noise.choice([0.06, 0.09, 0.14, 0.2, 0.3]) * noise.uniform(0.9, 1.1)
        rise, fall = noise.choice([0.004, 0.01, 0.025]), noise.choice([0.015, 0.04, 0.08])
        t = numpy.arange(int(length * rate)) / rate
        here = slice(int(at * rate), int(at * rate) + len(t))
        shape = numpy.minimum(1, t / rise) * numpy.minimum(1, (length - t) / fall)
        envelope[here] = shape * 10 ** (noise.uniform(-12, 0) / 20)
        sway = 1 + 0.1 * (t / length - 0.5) * noise.uniform(-1, 1)
        hertz[here] = pitch * noise.uniform(0.85, 1.2) * sway
        starts.append(at)
        at += length + (noise.uniform(0.02, 0.1) if noise.random() < 0.7 else noise.uniform(0.2, 0.5))
    phase = numpy.cumsum(hertz / rate) % 1 / 0.6
    flow = numpy.where(phase < 1, phase**2 * (1 - phase), 0)
    sound = numpy.diff(flow, prepend=0) * envelope
    for centre, width in (
        (noise.uniform(350, 800), 80),
        (noise.uniform(900, 2000), 110),
        (noise.uniform(2300, 2900), 160),
    ):
        radius = numpy.exp(-numpy.pi * width / rate)
        a = [1, -2 * radius * numpy.cos(2 * numpy.pi * centre / rate), radius**2]
        sound = scipy.signal.lfilter([sum(a)], a, sound)
    sound *= 10 ** (-7 / 20) / numpy.abs(sound).max()
    rumble = filtered("hp", 25, rate, scipy.signal.lfilter([1], [1, -0.995], noise.standard_normal(frames)))
    sound += rumble / rumble.std() * 10 ** (noise.uniform(-62, -50) / 20)
    sound += noise.standard_normal(frames) * 10 ** (noise.uniform(-70, -58) / 20)
    for start in starts:
        if noise.random() < 0.3:
            length = int(0.08 * rate)
            ess = filtered("hp", 3000, rate, noise.standard_normal(length)) * numpy.hanning(length)
            end = int(start * rate)
            sound[end - length : end] += 0.05 * ess
    return rate, sound, starts


def recording(path):
    """The first channel, and when its level rises by 12 dB [s]."""
    with wave.open(path, "rb") as file:
        if file.getsampwidth() != 2:
            sys.exit(f"{path}: 16 bits are expected")
        rate = file.getframerate()
        samples = numpy.frombuffer(file.readframes(file.getnframes()), "<i2")
        sound = samples.reshape(-1, file.getnchannels())[:, 0] / 32768
    window = numpy.ones(rate // 50) / (rate // 50)
    level = 10 * numpy.log10(numpy.convolve(sound**2, window, "same") + 1e-12)
    loud = numpy.percentile(level, 95) - 18
    later = rate // 25
    starts = []
    for frame in range(int(0.4 * rate), len(sound) - 2 * later, rate // 200):
        is_rise = level[frame + later] > max(loud, level[frame] + 12)
        if is_rise and not (starts and frame / rate - starts[-1] < 0.35):
            starts.append(frame / rate + 0.02)
    return rate, sound, starts


def thumps(starts, frames, rate, peak_dbfs, seed):
    """Thumps alone, and from which to which frame each lasts."""
    noise = numpy.random.default_rng(1000 + seed)
    sound = numpy.zeros(frames)
    places = []
    last = 0
    for start in starts:
        if start - last < 0.35 or start < 0.5:
            continue
        last = start
        begin = int((start + noise.uniform(-0.06, 0.005)) * rate)
        length = int(noise.uniform(0.02, 0.07) * rate)
        share = numpy.arange(length) / length
        shape = numpy.where(
            share < 0.25, numpy.sin(2 * numpy.pi * share) ** 2, numpy.cos(numpy.pi * (share - 0.25) / 1.5) ** 2
        )
        t = numpy.arange(length) / rate
        one = shape * numpy.sin(2 * numpy.pi * noise.uniform(28, 75) * t + noise.uniform(-0.5, 0.5))
        sound[begin : begin + length] += noise.choice([-1, 1]) * 10 ** (peak_dbfs / 20) * one / numpy.abs(one).max()
        places.append((begin, begin + length))
    return sound, places


def render(folder, rate, sound):
    take, out, chain = folder / "take.wav", folder / "out.wav", folder / "c.chain"
    data = numpy.asarray(sound, "<f8").tobytes()
    head = struct.pack("<IHHIIHH", 16, 3, 1, rate, 8 * rate, 8, 64)
    size = struct.pack("<I", 4 + 8 + len(head) - 4 + 8 + len(data))
    take.write_bytes(b"RIFF" + size + b"WAVEfmt " + head + b"data" + struct.pack("<I", len(data)) + data)
    chain.write_text(CHAIN)
    words = [launcher, "render", chain, "--take", take, "-o", out, "--bits", "64f", "--force", "--as-written"]
    done = subprocess.run(list(map(str, words)), capture_output=True, text=True)
    if done.returncode != 0:
        sys.exit(done.stderr)
    rendered = out.read_bytes()
    begin = rendered.index(b"data") + 8
    return numpy.frombuffer(rendered[begin : begin + len(data)], "<f8")


def runs(is_changed, gap):
    """From which to which frame something is changed, with what lies closer than a gap together."""
    changed = numpy.flatnonzero(is_changed)
    parts = numpy.split(changed, numpy.flatnonzero(numpy.diff(changed) > gap) + 1)
    return [(part[0], part[-1] + 1) for part in parts if len(part)]


def fall(before, after):
    return 10 * numpy.log10(max(1e-12, numpy.sum(after**2)) / numpy.sum(before**2))


launcher = pathlib.Path(__file__).resolve().parents[2] / "app" / "target" / "chainwright" / "bin" / "chainwright"
if len(sys.argv) < 2:
    sys.exit(__doc__)
seeds = {"tuning": range(10), "report": range(200, 210)}.get(sys.argv[1])
takes = [voice(seed) for seed in seeds] if seeds else [recording(path) for path in sys.argv[1:]]
falls = {level: [] for level in LEVELS}
places = []
seconds = sum(len(sound) / rate for rate, sound, _ in takes)
with tempfile.TemporaryDirectory() as name:
    folder = pathlib.Path(name)
    for seed, (rate, sound, starts) in enumerate(takes):
        clean = render(folder, rate, sound)
        taken = sound - clean
        low = filtered("lp", 150, rate, sound)
        for begin, end in runs(taken != 0, rate // 50):
            share = numpy.abs(taken[begin:end]).max() / numpy.abs(low[begin:end]).max()
            places.append(20 * numpy.log10(max(1e-9, 1 - share)))
        for level in LEVELS:
            planted, where = thumps(starts, len(sound), rate, level, seed)
            left = render(folder, rate, sound + planted) - sound
            falls[level] += [fall(planted[a:b], left[a:b]) for a, b in where]
    print("| peak [dBFS] | thumps | fell by 3 dB or more | by 6 dB or more | median [dB] |\n|---|---|---|---|---|")
    for level, values in falls.items():
        all_of = numpy.array(values)
        print(
            f"| {level} | {len(all_of)} | {100 * numpy.mean(all_of <= -3):.0f} % | {100 * numpy.mean(all_of <= -6):.0f} % |"
            f" {numpy.median(all_of):.1f} |"
        )
    by = numpy.array(places)
    print(f"\nplaces where nothing was planted: {len(by)} in {seconds:.0f} s, {numpy.sum(by <= -3)} of them by 3 dB or more")
