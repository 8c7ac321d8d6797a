"""Delay, gain and polarity of subs in one seeded room, found by scipy's differential evolution at equal objective;
written to subSettings.json, read by test/study/arrangement/subSettings.test.ts.

Run: /usr/bin/python3 test/reference/subSettings.py   (scipy 1.10.1, numpy 1.24; some seconds)

The room is a sum of modes of a rigid box (Kuttruff, Room Acoustics, 5th ed., section 3.2) in eight draws whose sizes and
decay differ a little, made here and nowhere else: the fields are part of the file. Objective, as stated in the test: mean
over draws and frequencies of the population standard deviation of the level over the seats, dB; with it a mean level no
more than 2 dB below that of plain settings, delays within 12 ms, gains from -8 to 0 dB, the first sub left as it is.
"""
import itertools
import json
from pathlib import Path

import numpy as np
from scipy.optimize import differential_evolution

rng = np.random.default_rng(20260418)
c = 343.0
frequencies = 20 * 2 ** (np.arange(32) / 12)
subs = np.array([[0.3, 0.3, 0.22], [4.3, 0.3, 0.22], [0.4, 5.6, 0.22]])
seats = np.array([[2.5, 4.1, 1.1], [1.7, 4.1, 1.1], [3.3, 4.1, 1.1]])


def field():
    sizes = np.array([4.6, 6.1, 2.45]) * (1 + 0.015 * rng.standard_normal(3))
    decay = rng.uniform(0.25, 0.65)
    delta = 3 * np.log(10) / decay
    counts = [int(2 * 250 * size / c) for size in sizes]
    order = np.array([[a, b, h] for a in range(counts[0] + 1) for b in range(counts[1] + 1) for h in range(counts[2] + 1)])
    omega_n = np.pi * c * np.linalg.norm(order / sizes, axis=1)
    norm = np.prod(np.where(order == 0, 1, 2) / sizes, axis=1)
    shape = lambda p: np.prod(np.cos(np.pi * order * (p / sizes)), axis=1)
    omega = 2 * np.pi * frequencies[:, None]
    weight = norm / ((omega_n**2 - omega**2 + delta**2 + 2j * omega * delta) / c**2)
    sums = np.array([[4 * np.pi * weight @ (shape(s) * shape(r)) for r in seats] for s in subs])
    ways = np.linalg.norm(subs - seats[0], axis=1) / c
    return sums * np.exp(2j * np.pi * frequencies * ways[:, None])[:, None, :]


fields = np.array([field() for _ in range(8)])


def figures(settings):
    turns = np.array([sign * 10 ** (gain / 20) * np.exp(-2j * np.pi * frequencies * delay / 1000) for delay, gain, sign in settings])
    level = 20 * np.log10(np.abs((fields * turns[None, :, None, :]).sum(axis=1)))
    return float(level.std(axis=1).mean()), float(level.mean())


plain = (0.0, 0.0, 1)
plain_spread, plain_output = figures([plain] * len(subs))


def settings_of(x, signs):
    return [plain] + [(x[2 * i], x[2 * i + 1], sign) for i, sign in enumerate(signs)]


def cost(x, signs):
    spread, output = figures(settings_of(x, signs))
    return spread + max(0.0, plain_output - 2 - output) * 10


# Polarity is tried whole: a search over real numbers does badly with signs.
tried = [
    (differential_evolution(cost, [(-12, 12), (-8, 0)] * (len(subs) - 1), args=(signs,), seed=1, popsize=20, maxiter=120, tol=1e-5, polish=False), signs)
    for signs in itertools.product((1, -1), repeat=len(subs) - 1)
]
found, signs = min(tried, key=lambda one: one[0].fun)
best = settings_of(found.x, signs)
spread, output = figures(best)
assert output >= plain_output - 2.01
round_list = lambda a: [round(float(v), 7) for v in np.asarray(a).reshape(-1)]
Path(__file__).with_suffix(".json").write_text(
    json.dumps(
        {
            "frequenciesHertz": round_list(frequencies),
            "subs": len(subs),
            "seats": len(seats),
            "fields": [{"real": round_list(one.real), "imaginary": round_list(one.imag)} for one in fields],
            "plain": {"spreadDb": plain_spread, "outputDb": plain_output},
            "best": {"spreadDb": spread, "outputDb": output, "settings": [[round(d, 3), round(g, 3), s] for d, g, s in best]},
        }
    )
    + "\n"
)
print(plain_spread, spread, plain_output, output, best, [(one.fun, one.nfev, sign) for one, sign in tried])
