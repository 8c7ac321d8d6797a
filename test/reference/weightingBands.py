"""Band-integrated corrections of the A and C weighting for pink noise, by adaptive quadrature.

Run: /usr/bin/python3 weightingBands.py > weightingBands.json   (numpy, scipy 1.10.1)
Weighting: IEC 61672-1:2013, Annex E. Pink noise has constant power per logarithmic step of frequency.
Also values of the normal distribution's upper tail from scipy.stats.
"""

import json

import numpy as np
from scipy import integrate, stats

F1, F2, F3, F4 = 20.598997, 107.65265, 737.86223, 12194.217


def c_gain(f):
    return F4**2 * f**2 / ((f**2 + F1**2) * (f**2 + F4**2))


def a_gain(f):
    return c_gain(f) * f**2 / np.sqrt((f**2 + F2**2) * (f**2 + F3**2))


def correction(gain, low, high):
    power = lambda x: (gain(np.exp(x)) / gain(1000.0)) ** 2
    total, _ = integrate.quad(power, np.log(low), np.log(high), epsabs=0, epsrel=1e-12, limit=500)
    return 10 * np.log10(total / np.log(high / low))


bands = [(28.2, 112.2), (355, 2818), (20, 20000), (40, 120), (10, 100), (200, 5000), (63, 64), (1000, 10000)]
rows = [
    {
        "fromHertz": low,
        "toHertz": high,
        "aDb": round(correction(a_gain, low, high), 9),
        "cDb": round(correction(c_gain, low, high), 9),
    }
    for low, high in bands
]
tail = [{"z": z, "above": stats.norm.sf(z)} for z in (-3, -1, 0, 0.1, 0.5, 1, 1.2247448713915892, 1.96, 3.29, 5, 8)]
print(json.dumps({"bands": rows, "normalTail": tail}, indent="\t"))
