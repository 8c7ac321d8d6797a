"""Responses of analogue filters by scipy.signal, the reference for test/acoustics/filters.

Run: /usr/bin/python3 test/reference/filters.py   (scipy 1.10.1)
Writes filters.json beside itself: magnitude in dB and phase in radians on a grid, and group delay in milliseconds.
"""
import json
import pathlib

import numpy as np
from scipy import signal

corner = 80.0
grid = np.array([10.0, 20.0, 31.5, 40.0, 63.0, 80.0, 100.0, 126.0, 160.0, 250.0, 400.0])
omega = 2 * np.pi * grid


def entry(kind, side, order, numerator, denominator):
    _, response = signal.freqs(numerator, denominator, worN=omega)
    # Group delay from a central difference of scipy's own phase; step small against the grid.
    step = 1e-4
    _, above = signal.freqs(numerator, denominator, worN=omega * (1 + step))
    _, below = signal.freqs(numerator, denominator, worN=omega * (1 - step))
    delay = -np.angle(above / below) / (2 * step * omega) * 1000
    return {
        "kind": kind,
        "pass": side,
        "order": order,
        "real": response.real.tolist(),
        "imaginary": response.imag.tolist(),
        "groupDelayMs": delay.tolist(),
    }


entries = []
for side in ("low", "high"):
    for order in range(1, 9):
        entries.append(entry("butterworth", side, order, *signal.butter(order, 2 * np.pi * corner, side, analog=True)))
    for order in (2, 4, 6, 8):
        zeros, poles, gain = signal.butter(order // 2, 2 * np.pi * corner, side, analog=True, output="zpk")
        squared = signal.zpk2tf(np.tile(zeros, 2), np.tile(poles, 2), gain**2)
        entries.append(entry("linkwitz-riley", side, order, *squared))

# Closed boxes: s² / (s² + s·w0/Q + w0²).
boxes = []
for q in (0.5, 0.57735, 0.707107, 0.9, 1.2):
    w0 = 2 * np.pi * 50.0
    item = entry("closed", "high", 2, [1, 0, 0], [1, w0 / q, w0 * w0])
    item["totalQ"] = q
    item["resonanceHz"] = 50.0
    boxes.append(item)

out = pathlib.Path(__file__).with_suffix(".json")
out.write_text(
    json.dumps({"cornerHz": corner, "frequenciesHz": grid.tolist(), "filters": entries, "closedBoxes": boxes}, indent=1)
    + "\n"
)
