#!/usr/bin/python3
"""Makes the audio files of this folder with libraries that are not ours.

Needs Debian's python3-soundfile (libsndfile) and flac. The samples follow from a formula, so a test knows them without
reading this; every file is read back here with libsndfile, and must hold them.
"""
import hashlib
import os
import struct
import subprocess
import numpy as np
import soundfile as sf

FRAMES = 60
here = os.path.dirname(os.path.abspath(__file__))


def integers(bits, channels, frames=FRAMES):
    """Channel c holds (7919 n + 104729 c) mod 2^bits, less 2^(bits-1); the first two frames hold both extremes."""
    n = np.arange(frames, dtype=np.int64)[:, None]
    c = np.arange(channels, dtype=np.int64)[None, :]
    values = (7919 * n * (1 << max(bits - 16, 0)) + 104729 * c) % (1 << bits) - (1 << (bits - 1))
    values[0] = -(1 << (bits - 1))
    values[1] = (1 << (bits - 1)) - 1
    return values


def floats(channels):
    """Channel c holds twice the integers of 24 bits, as a share of full scale."""
    return integers(24, channels) / 2.0**22


def write(name, data, rate, **how):
    path = os.path.join(here, name)
    sf.write(path, data, rate, **how)
    back, got = sf.read(path, dtype=data.dtype, always_2d=True)
    assert got == rate and np.array_equal(back, data), name


def shifted(bits, channels):
    return (integers(bits, channels) << (32 - bits)).astype(np.int32)


write("wav-8.wav", shifted(8, 1), 8000, subtype="PCM_U8")
write("wav-16.wav", shifted(16, 2), 44100, subtype="PCM_16")
write("wav-24.wav", shifted(24, 3), 96000, subtype="PCM_24")
write("wav-32.wav", shifted(32, 2), 384000, subtype="PCM_32")
write("wav-32f.wav", floats(2).astype(np.float32), 48000, subtype="FLOAT")
write("wav-64f.wav", floats(2), 192000, subtype="DOUBLE")
write("wavex-24.wav", shifted(24, 6), 48000, format="WAVEX", subtype="PCM_24")
write("wavex-32f.wav", floats(4).astype(np.float32), 48000, format="WAVEX", subtype="FLOAT")
write("rf64-16.wav", shifted(16, 2), 44100, format="RF64", subtype="PCM_16")
write("aiff-8.aiff", shifted(8, 1), 22050, format="AIFF", subtype="PCM_S8")
write("aiff-16.aiff", shifted(16, 2), 44100, format="AIFF", subtype="PCM_16")
write("aiff-24.aiff", shifted(24, 3), 48000, format="AIFF", subtype="PCM_24")
write("aiff-32.aiff", shifted(32, 2), 96000, format="AIFF", subtype="PCM_32")
write("aifc-sowt.aiff", shifted(16, 2), 44100, format="AIFF", subtype="PCM_16", endian="LITTLE")
write("aifc-32f.aiff", floats(2).astype(np.float32), 48000, format="AIFF", subtype="FLOAT")
write("aifc-64f.aiff", floats(2), 48000, format="AIFF", subtype="DOUBLE")


def crc(data, polynomial, width):
    rest = 0
    for byte in data:
        rest ^= byte << (width - 8)
        for _ in range(8):
            rest = (rest << 1 ^ (polynomial if rest >> (width - 1) & 1 else 0)) & ((1 << width) - 1)
    return rest


def number(value):
    """A frame's number, coded as UTF-8 codes characters."""
    if value < 0x80:
        return bytes([value])
    if value < 0x800:
        return bytes([0xC0 | value >> 6, 0x80 | value & 0x3F])
    return bytes([0xE0 | value >> 12, 0x80 | value >> 6 & 0x3F, 0x80 | value & 0x3F])


def variable_flac(name, values, rate, sizes):
    """FLAC of verbatim subframes in blocks of several sizes, which no encoder here makes; 16 bits, after an ID3 tag."""
    frames, channels = values.shape
    md5 = hashlib.md5(values.astype("<i2").tobytes()).digest()
    packed = rate << 44 | (channels - 1) << 41 | 15 << 36 | frames
    info = struct.pack(">HH6xQ", min(sizes), max(sizes), packed) + md5
    out = b"ID3\x04\x00\x00\x00\x00\x00\x05hello" + b"fLaC" + b"\x80\x00\x00\x22" + info
    at = 0
    for size in sizes:
        head = b"\xff\xf9" + bytes([0x70 | 0x0D, (channels - 1) << 4 | 0x08]) + number(at)
        head += struct.pack(">HH", size - 1, rate)
        head += bytes([crc(head, 0x07, 8)])
        for c in range(channels):
            head += b"\x02" + values[at:at + size, c].astype(">i2").tobytes()
        out += head + struct.pack(">H", crc(head, 0x8005, 16))
        at += size
    assert at == frames
    path = os.path.join(here, name)
    with open(path, "wb") as file:
        file.write(out)
    subprocess.run(["flac", "-t", "-s", path], check=True)
    back, _ = sf.read(path, dtype="int16", always_2d=True)
    assert np.array_equal(back, values), name


def tones(bits, frames):
    """Two channels that are alike, as recordings are: decaying tones and a little noise, seeded."""
    n = np.arange(frames)
    noise = np.random.default_rng(1).standard_normal((frames, 2)) * 3e-4
    tone = 0.5 * np.exp(-n / 9000) * np.sin(2 * np.pi * 220 / 44100 * n) + 0.2 * np.sin(2 * np.pi * 1733 / 44100 * n)
    left_right = np.stack([tone, 0.7 * tone], 1) + noise
    return np.rint(left_right * (1 << (bits - 1))).astype(np.int64)


def coded_flac(name, values, bits, rate, *options):
    """FLAC of the reference encoder, from raw samples; its own MD5 sum stands in it."""
    width = (bits + 7) // 8
    raw = b"".join(int(v).to_bytes(width, "little", signed=True) for v in values.flatten())
    path = os.path.join(here, name)
    subprocess.run(["flac", "-s", "-f", "--no-padding", "--force-raw-format", "--endian=little", "--sign=signed",
                    f"--channels={values.shape[1]}", f"--bps={bits}", f"--sample-rate={rate}", *options,
                    "-o", path, "-"], input=raw, check=True)
    subprocess.run(["flac", "-t", "-s", path], check=True)


coded_flac("flac-8.flac", integers(8, 1), 8, 8000)
coded_flac("flac-16.flac", integers(16, 2), 16, 44100)
coded_flac("flac-24.flac", integers(24, 6), 24, 96000)
coded_flac("flac-32.flac", integers(32, 2), 32, 192000)
coded_flac("flac-wasted.flac", integers(16, 2) << 8, 24, 48000)
coded_flac("flac-tones.flac", tones(16, 3000), 16, 44100, "-8", "-b", "512")
coded_flac("flac-tones-24.flac", tones(24, 1500), 24, 384000, "-8", "--lax", "-b", "700", "-l", "32", "-m")
coded_flac("flac-fixed.flac", tones(16, 1500), 16, 44100, "-2", "-b", "576", "-l", "0")
variable_flac("flac-variable.flac", integers(16, 2, 3000).astype(np.int16), 44100, [500, 16, 2000, 400, 84])


def vorbis(name, data, rate):
    """Ogg Vorbis of libsndfile, and beside short ones what libsndfile decodes of it: 16 bits, low byte first."""
    path = os.path.join(here, name)
    sf.write(path, data, rate, format="OGG", subtype="VORBIS")
    back, _ = sf.read(path, dtype="int16", always_2d=True)
    assert len(back) == len(data), name
    if len(data) <= 3000:
        with open(path.replace(".ogg", ".s16"), "wb") as file:
            file.write(back.astype("<i2").tobytes())


vorbis("vorbis.ogg", tones(16, 3000) / 2.0**15, 44100)
vorbis("vorbis-long.ogg", np.random.default_rng(2).uniform(-0.5, 0.5, 40000), 8000)
