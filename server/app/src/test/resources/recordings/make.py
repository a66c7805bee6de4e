#!/usr/bin/python3
"""Makes the recordings of this folder: invented, small, and with something to measure in each.

platform.wav: 3.5 s, 8 kHz, 8 bit, stereo: an announcer's "vowels" over noise, cut at full scale on the left in the
second one, softer and inverted on the right, which has an offset.
"""
import math
import os
import wave

RATE = 8000
here = os.path.dirname(os.path.abspath(__file__))
state = 7


def noise():
    global state
    state = (1664525 * state + 1013904223) % 2**32
    return state / 2**31 - 1


def byte(value):
    return max(0, min(255, round(value * 128) + 128))


frames = bytearray()
for n in range(int(3.5 * RATE)):
    t = n / RATE
    spoken = (0.4 < t < 1.4) * 0.5 + (1.9 < t < 3.1) * 1.9
    voice = spoken * sum(math.sin(2 * math.pi * 140 * k * t) / (k + 1) for k in range(1, 9)) * 0.55
    frames += bytes((byte(voice + 0.02 * noise()), byte(0.03 - 0.4 * voice + 0.02 * noise())))
with wave.open(os.path.join(here, "platform.wav"), "wb") as file:
    file.setnchannels(2)
    file.setsampwidth(1)
    file.setframerate(RATE)
    file.writeframes(bytes(frames))
