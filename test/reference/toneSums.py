"""Tones of two sources at several delays fitted by scipy.optimize, the reference for the blend's sums.

Run: /usr/bin/python3 test/reference/toneSums.py   (numpy, scipy of Debian)
Writes toneSums.json beside itself: readings made by the law of superposition with noise, and what scipy makes of them:
a, b, c of power = a + s(b cos wt + c sin wt) by nonlinear least squares on powers weighted by the readings' own sigma, the
covariance, and the best delay of the mean level over all tones by a brute search.
"""
import json
import pathlib

import numpy as np
from scipy import optimize

random = np.random.default_rng(20260418)
k = np.log(10) / 10


def row(hertz, later, inverted):
    angle = 2 * np.pi * hertz * later / 1000
    sign = np.where(inverted, -1.0, 1.0)
    return sign * np.cos(angle), sign * np.sin(angle)


cases = []
for number in range(12):
    hertz = float(random.choice([60, 64, 75, 80, 100]))
    still, moved = random.uniform(62, 78, 2)
    phase = random.uniform(0, 2 * np.pi)
    count = 3 if number < 6 else int(random.integers(4, 9))
    period = 1000 / 80
    later = 3.1 + period / 3 * np.arange(count) if count == 3 else random.uniform(-8, 12, count)
    inverted = np.zeros(count, bool) if count == 3 else random.random(count) < 0.2
    a = 10 ** (still / 10) + 10 ** (moved / 10)
    r = 2 * 10 ** ((still + moved) / 20)
    cos, sin = row(hertz, later, inverted)
    power = a + r * np.cos(phase) * cos + r * np.sin(phase) * sin
    sigma = 0.3
    levels = np.round(10 * np.log10(power) + random.normal(0, sigma, count), 1)
    powers = 10 ** ((levels - levels.max()) / 10)
    sigmas = k * np.maximum(powers, 0.01) * sigma
    found = optimize.least_squares(
        lambda x: (x[0] + x[1] * cos + x[2] * sin - powers) / sigmas,
        [powers.mean(), 0.1, 0.1], xtol=1e-15, ftol=1e-15, gtol=1e-15,
    )
    scale = 10 ** (levels.max() / 10)
    covariance = np.linalg.inv(found.jac.T @ found.jac) * scale**2
    cases.append({
        "hertz": hertz,
        "readings": [
            {"laterMs": float(t), "inverted": bool(i), "levelDb": float(level), "sigmaDb": sigma}
            for t, i, level in zip(later, inverted, levels)
        ],
        "abc": (found.x * scale).tolist(),
        "covariance": covariance.tolist(),
    })

here = pathlib.Path(__file__)
here.with_suffix(".json").write_text(json.dumps(cases, indent="\t") + "\n")
