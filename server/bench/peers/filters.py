"""Times scipy.signal.sosfilt on samples in memory, for chainwright.bench.ChainRace.

usage: filters.py SECTIONS SIGNAL RESULT: a line of six numbers for each section; two channels of doubles,
one after the other; and where `write` puts what came out. `name` answers with the library's version,
`filter` filters all of it once and answers with the processor time [ns].
"""

import sys
import time

import numpy
import scipy
import scipy.signal

sections = numpy.loadtxt(sys.argv[1], ndmin=2)
signal = numpy.fromfile(sys.argv[2]).reshape(2, -1)
filtered = signal
for line in sys.stdin:
    answer = "done"
    if line.strip() == "name":
        answer = "scipy " + scipy.__version__
    elif line.strip() == "filter":
        start = time.thread_time_ns()
        filtered = scipy.signal.sosfilt(sections, signal, axis=-1)
        answer = str(time.thread_time_ns() - start)
    else:
        filtered.tofile(sys.argv[3])
    print(answer, flush=True)
