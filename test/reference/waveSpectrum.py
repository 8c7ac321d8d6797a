"""Level, crest, slope and band edges of a WAV file of band noise, by scipy; called by test/signal/waveFile.test.ts.

Run: /usr/bin/python3 test/reference/waveSpectrum.py FILE FROM_HZ TO_HZ   (scipy 1.10.1)
The loop is taken three times in a row, so that its seams are part of what is measured. Prints JSON.
"""
import json
import sys

import numpy as np
from scipy import signal
from scipy.io import wavfile

path, low, high = sys.argv[1], float(sys.argv[2]), float(sys.argv[3])
rate, data = wavfile.read(path)
# scipy returns 24-bit samples left-justified in 32 bits.
samples = data.astype(float) / 2**31
rms = np.sqrt(np.mean(samples**2))
looped = np.tile(samples, 3)
# One loop a segment with a window: the estimate resolves about two lines.
f, density = signal.welch(looped, rate, window="hann", nperseg=len(samples), noverlap=len(samples) // 2)
inside = (f >= low + 1) & (f <= high - 1)
slope = np.polyfit(np.log2(f[inside]), 10 * np.log10(density[inside]), 1)[0]
# Density times frequency is flat for pink noise; the edges are where it passes half its median.
flat = density * f
level = np.median(flat[inside])
above = np.nonzero(flat > level / 2)[0]
outside = (f < low - 2) | (f > high + 2)
print(
    json.dumps(
        {
            "rateHz": rate,
            "levelDbfs": 20 * np.log10(rms * np.sqrt(2)),
            "crestDb": 20 * np.log10(np.max(np.abs(samples)) / rms),
            "slopeDbPerOctave": slope,
            "lowEdgeHz": f[above[0]],
            "highEdgeHz": f[above[-1]],
            "outsideDb": 10 * np.log10(np.sum(density[outside]) / np.sum(density[~outside])),
        }
    )
)
