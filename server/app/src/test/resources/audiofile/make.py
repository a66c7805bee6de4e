#!/usr/bin/python3
"""Makes the audio files of this folder with libraries that are not ours.

Needs Debian's python3-soundfile (libsndfile). The samples follow from a formula, so a test knows them without
reading this; every file is read back here with libsndfile, and must hold them.
"""
import os
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
