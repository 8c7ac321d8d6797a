"""Sweeps through a known system, resampled, and a decaying noise by octaves: the reference of test/study/hearing/againstScipy.test.ts.

Run: /usr/bin/python3 test/reference/hearing.py FOLDER < PLAN   (scipy 1.10.1)
The plan is JSON with the law of the sweep: from, to, L, swellsTo, fadesFrom (hertz and seconds) and lead (seconds of silence).
Writes to FOLDER, as 64-bit float WAV files: 48000.wav, the sweep through the system; 44100.wav and 96000.wav, the same by
resample_poly; decay.wav, noise that dies away. Prints JSON: the system's response by sosfreqz, the impulse response by
regularised division in numpy, the decay by Butterworth octave filters and Schroeder's integration, and the attenuation of these
filters.
"""
import json
import sys

import numpy as np
from scipy import signal
from scipy.io import wavfile

folder = sys.argv[1]
plan = json.load(sys.stdin)
rate = 48000
f1, f2, L = plan["from"], plan["to"], plan["L"]


def sweep(n):
    t = np.arange(n) / rate - plan["lead"]
    end = L * np.log(f2 / f1)
    swell = L * np.log(plan["swellsTo"] / f1)
    fade = L * np.log(plan["fadesFrom"] / f1)
    x = np.sin(2 * np.pi * f1 * L * np.exp(np.clip(t, 0, end) / L))
    size = np.where(t < swell, 0.5 - 0.5 * np.cos(np.pi * np.clip(t, 0, swell) / swell), 1)
    size = np.where(t > fade, 0.5 + 0.5 * np.cos(np.pi * (np.clip(t, fade, end) - fade) / (end - fade)), size)
    return np.where((t >= 0) & (t <= end), size * x, 0)


# A box of 45 Hz, a mode at 63 Hz, a dip at 700 Hz, two poles at 9 kHz; then an echo, half as strong and turned.
peak_b, peak_a = signal.iirpeak(63, 8, fs=rate)
system = np.vstack(
    [
        signal.butter(2, 45, "high", fs=rate, output="sos"),
        np.concatenate([peak_a + 2 * peak_b, peak_a]),
        np.concatenate(signal.iirnotch(700, 3, fs=rate)),
        signal.butter(2, 9000, "low", fs=rate, output="sos"),
    ]
)
delay, echo, gain = 240, 240 + 331, -0.5
n = 2**18
played = sweep(n)
through = signal.sosfilt(system, played)
recorded = np.zeros(n)
recorded[delay:] += through[:-delay]
recorded[echo:] += gain * through[:-echo]
recorded *= 0.1
wavfile.write(f"{folder}/48000.wav", rate, recorded)
wavfile.write(f"{folder}/44100.wav", 44100, signal.resample_poly(recorded, 147, 160))
wavfile.write(f"{folder}/96000.wav", 96000, signal.resample_poly(recorded, 2, 1))

grid = np.geomspace(25, 15000, 60)
_, response = signal.sosfreqz(system, worN=grid, fs=rate)
response = 0.1 * response * (np.exp(-2j * np.pi * grid * delay / rate) + gain * np.exp(-2j * np.pi * grid * echo / rate))

# Regularised division as stated in the program's docstring, by numpy's own transform.
X, Y = np.fft.rfft(played), np.fft.rfft(recorded)
f = np.fft.rfftfreq(n, 1 / rate)
power = np.abs(X) ** 2
inside = (f >= plan["swellsTo"]) & (f <= plan["closes"])
strength = np.mean((power * f)[inside])
step = lambda f, a, b: 0.5 - 0.5 * np.cos(np.pi * np.clip(np.log(np.maximum(f, 1e-9) / a) / np.log(b / a), 0, 1))
band = step(f, f1, plan["swellsTo"]) * (1 - step(f, plan["closes"], plan["closed"]))
impulse = np.fft.irfft(Y * np.conj(X) * band / (power + 1e-4 * strength / np.maximum(f, 1e-9)))

# Noise whose decay time falls with frequency, as in rooms: one noise an octave, each with its own exponential.
random = np.random.default_rng(7)
length = int(1.6 * rate)
t = np.arange(length) / rate
decay = np.zeros(length)
times = {63: 0.9, 125: 0.6, 250: 0.5, 500: 0.4, 1000: 0.35, 2000: 0.3, 4000: 0.28, 8000: 0.25}
# Octave filters as they are usually built: Butterworth, six poles.
octaves = {k: 1000 * 10 ** (0.3 * i) for k, i in zip(times, range(-4, 4))}
filters = {
    k: signal.butter(3, [m * 10**-0.15, m * 10**0.15], "band", fs=rate, output="sos") for k, m in octaves.items()
}
for k in times:
    part = signal.sosfilt(filters[k], random.normal(size=2 * length))[length:]
    decay += part / np.std(part) * 10 ** (-3 * t / times[k])
decay += 1e-5 * random.normal(size=length)
decay *= 0.1
wavfile.write(f"{folder}/decay.wav", rate, decay)


def seconds(fall, top, bottom):
    inside = (fall <= top) & (fall >= bottom)
    return -60 / np.polyfit(t[inside], fall[inside], 1)[0]


decays, attenuation = [], []
for k, m in octaves.items():
    # Backwards through the filter, so that its own ringing does not count. ISO 3382-2:2008, 7.3 (known as a quotation).
    within = signal.sosfilt(filters[k], decay[::-1])[::-1] ** 2
    fall = 10 * np.log10(np.cumsum(within[::-1])[::-1])
    fall -= fall[0]
    decays.append({"hertz": k, "edt": seconds(fall, 0, -10), "t20": seconds(fall, -5, -25), "t30": seconds(fall, -5, -35)})
    if k <= 2000:
        at = m * 10 ** (0.3 * np.array([0, 1 / 8, 1 / 4, 3 / 8, 1 / 2, 1, 2]))
        attenuation.append((-20 * np.log10(np.abs(signal.sosfreqz(filters[k], worN=at, fs=rate)[1]))).tolist())

at = np.arange(200, 700)
print(
    json.dumps(
        {
            "frequenciesHz": grid.tolist(),
            "real": response.real.tolist(),
            "imaginary": response.imag.tolist(),
            "samples": at.tolist(),
            "impulse": impulse[at].tolist(),
            "decays": decays,
            "attenuation": attenuation,
        }
    )
)
