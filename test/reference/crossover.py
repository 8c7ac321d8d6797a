"""Crossover ripple by scipy, the reference for test/calibration/crossover.

Run: /usr/bin/python3 test/reference/crossover.py   (scipy 1.10.1)
Each case: speaker box, sub, receiver's filters, crossover. The delay within half a period that gives the least ripple
of the complex sum, from half to twice the crossover on a 1/24-octave grid, is found by brute force on a fine grid.
Written with scipy's transfer functions throughout; nothing of the program is used.
"""
import json
import pathlib

import numpy as np
from scipy import optimize, signal


def closed_corner(limit, ratio, q):
    # |H|^2 at the limit equals ratio, solved numerically.
    def miss(fc):
        x = limit / fc
        return x**4 / ((1 - x * x) ** 2 + (x / q) ** 2) - ratio

    return optimize.brentq(miss, limit / 20, limit * 20)


def box(kind, limit, drop, q):
    ratio = {3: 0.5, 6: 0.25, 10: 0.1}[drop]
    if kind == "closed":
        fc = closed_corner(limit, ratio, q)
        w = 2 * np.pi * fc
        return [1, 0, 0], [1, w / q, w * w]
    corner = optimize.brentq(lambda fc: 1 / (1 + (fc / limit) ** 8) - ratio, limit / 20, limit * 20)
    return signal.butter(4, 2 * np.pi * corner, "high", analog=True)


def response(transfer, f):
    return signal.freqs(*transfer, worN=2 * np.pi * f)[1]


def shape(side, kind, order, fc):
    if kind == "butterworth":
        return signal.butter(order, 2 * np.pi * fc, side, analog=True)
    z, p, k = signal.butter(order // 2, 2 * np.pi * fc, side, analog=True, output="zpk")
    return signal.zpk2tf(np.tile(z, 2), np.tile(p, 2), k * k)


cases = []
for kind, limit, drop, q, fc, high, low, sub_low, sub_high in [
    ("closed", 80, 3, 0.7071067811865476, 80, ("butterworth", 2), ("linkwitz-riley", 4), None, None),
    ("closed", 60, 6, 0.9, 80, ("butterworth", 2), ("linkwitz-riley", 4), None, 200),
    ("vented", 45, 3, 0.7071067811865476, 80, ("butterworth", 2), ("linkwitz-riley", 4), 25, 180),
    ("vented", 38, 10, 0.7071067811865476, 60, ("butterworth", 2), ("linkwitz-riley", 4), 22, 150),
    ("closed", 100, 3, 0.6, 120, ("butterworth", 3), ("butterworth", 3), 30, 250),
    ("closed", 50, 3, 0.7071067811865476, 100, ("linkwitz-riley", 4), ("linkwitz-riley", 4), None, None),
]:
    f = fc * 2 ** (np.arange(49) / 24 - 1)
    mains = response(box(kind, limit, drop, q), f) * response(shape("high", *high, fc), f)
    sub = response(shape("low", *low, fc), f)
    if sub_high:
        sub = sub * response(signal.butter(2, 2 * np.pi * sub_high, "low", analog=True), f)
    if sub_low:
        lower = response(box("vented", sub_low, 3, 1), f)
        sub = sub * lower / np.abs(lower)

    def ripple(tau, sign=1):
        levels = 20 * np.log10(np.abs(mains + sign * sub * np.exp(-2j * np.pi * f * tau)))
        return levels.max() - levels.min()

    taus = np.linspace(-0.5 / fc, 0.5 / fc, 8001)
    values = [ripple(t) for t in taus]
    best = taus[int(np.argmin(values))]
    least = min(values)
    off = max(ripple(best - 1e-3), ripple(best + 1e-3)) - least
    cases.append(
        {
            "box": kind, "lowLimitHertz": limit, "lowLimitDropDb": drop, "totalQ": q, "crossoverHertz": fc,
            "highPass": {"kind": high[0], "order": high[1]}, "lowPass": {"kind": low[0], "order": low[1]},
            "subLowLimitHertz": sub_low, "subUpperLimitHertz": sub_high,
            "rippleDb": least, "subDelayMs": best * 1000, "toleranceDb": off,
        }
    )

pathlib.Path(__file__).with_suffix(".json").write_text(json.dumps(cases, indent=1) + "\n")
