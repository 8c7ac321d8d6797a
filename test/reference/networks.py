"""Twenty random rooms with tape readings, adjusted by scipy.optimize.least_squares (trf, exact Jacobian).

Writes networks.json beside this file: points, readings, adjusted coordinates and their covariance. Seeded.
Points are seats, speakers, subs and the screen; readings go between points and to walls, floor and ceiling, some of
them sloped; room dimensions are unknown in half of the rooms. Sigma: sqrt((2 mm)^2 + (1 mm/m d)^2 + (1 mm)^2/12)
and, in square, how each end is held: 12 mm at a seat, 7 mm at everything else.
"""
import json
import pathlib

import numpy as np
from scipy.optimize import least_squares

SPEAKERS = ['FL', 'FR', 'FC', 'SiL', 'SiR', 'BL', 'BR', 'TpFL', 'TpFR', 'TpBL', 'TpBR']
AZIMUTH = dict(FL=30, FR=-30, FC=0, SiL=90, SiR=-90, BL=135, BR=-135, TpFL=45, TpFR=-45, TpBL=135, TpBR=-135)
PLANES = ['wall:left', 'wall:right', 'wall:front', 'wall:back', 'floor', 'ceiling']


SEATS = ['sofa', 'chair']


def sigma(d, *ends):
    held = sum((0.012 if end in SEATS else 0.007) ** 2 for end in ends)
    return np.sqrt(0.002**2 + (0.001 * d) ** 2 + 0.001**2 / 12 + held)


def room(rng, index):
    size = np.array([rng.uniform(3.2, 6), rng.uniform(4.5, 8), rng.uniform(2.3, 3.0)])
    seat = np.array([size[0] / 2 + rng.uniform(-.2, .2), size[1] * rng.uniform(.5, .7), rng.uniform(.95, 1.15)])
    slope = None
    if index % 4 == 3:
        axis = int(rng.integers(0, 2))
        slope = dict(axis=axis, heights=[float(round(rng.uniform(2.0, 2.4), 3)), float(round(rng.uniform(2.6, 3.2), 3))])
    points = {'sofa': seat, 'chair': seat + [rng.uniform(.6, .9), rng.uniform(-.1, .1), rng.uniform(-.05, .05)],
              'screen': np.array([size[0] / 2, 0.05, rng.uniform(1, 1.3)])}
    names = SPEAKERS[:int(rng.integers(5, 12))]
    for name in names:
        a = np.radians(AZIMUTH[name] + rng.uniform(-8, 8))
        up = name.startswith('Tp')
        r = rng.uniform(1.0, 1.3) if up else rng.uniform(1.4, min(2.4, size[0] / 2 + .6))
        p = seat + [-np.sin(a) * r, -np.cos(a) * r, rng.uniform(.8, 1.0) if up else rng.uniform(-.2, .3)]
        points[name] = np.clip(p, .05, size - .05)
        if slope:
            points[name][2] = min(points[name][2], 1.95)
    points['sub1'] = np.array([rng.uniform(.3, 1), rng.uniform(.3, 1), rng.uniform(.2, .3)])
    return size, points, slope


def model(name_a, name_b, points, size, slope):
    """Distance between two ends for coordinates in a dict; works for real and dual arrays alike."""
    if name_a in PLANES and name_b in PLANES:
        return size[{'wall:left': 0, 'wall:front': 1, 'floor': 2}[name_a]]
    if name_b in PLANES:
        p = points[name_a]
        axis, far = {'wall:left': (0, 0), 'wall:right': (0, 1), 'wall:front': (1, 0), 'wall:back': (1, 1),
                     'floor': (2, 0), 'ceiling': (2, 1)}[name_b]
        if name_b == 'ceiling' and slope:
            h1, h2 = slope['heights']
            s = size[slope['axis']]
            return (h1 + (h2 - h1) * p[slope['axis']] / s - p[2]) * s / np.sqrt(s**2 + (h2 - h1) ** 2)
        return size[axis] - p[axis] if far else p[axis]
    d = points[name_a] - points[name_b]
    return np.sqrt(np.sum(d * d))


def adjust(names, readings, exact, size, points, slope):
    free = [i for i in range(3) if exact[i] is None and not (i == 2 and slope)]

    def unpack(x):
        s = np.array([size[i] if exact[i] is None else exact[i] for i in range(3)], dtype=x.dtype)
        s[free] = x[3 * len(names):]
        return {n: x[3 * k:3 * k + 3] for k, n in enumerate(names)}, s

    def residuals(x):
        p, s = unpack(x)
        return np.array([(model(a, b, p, s, slope) - d) / sigma(d, a, b) for a, b, d in readings])

    start = np.concatenate([np.concatenate([points[n] for n in names]), size[free]])
    # A complex step gives the derivatives exactly.
    def jacobian(x):
        columns = []
        for k in range(len(x)):
            z = x.astype(complex)
            z[k] += 1e-30j
            columns.append(np.imag(residuals(z)) / 1e-30)
        return np.array(columns).T

    found = least_squares(lambda x: residuals(x).real, start, jac=jacobian, xtol=1e-15, ftol=1e-15, gtol=1e-12)
    j = jacobian(found.x)
    covariance = np.linalg.inv(j.T @ j)
    return found.x, covariance, 2 * found.cost, free


def main():
    cases = []
    for index in range(20):
        rng = np.random.default_rng(1000 + index)
        size, points, slope = room(rng, index)
        names = list(points)
        exact = [float(round(v, 3)) for v in size] if index % 2 == 0 else [None] * 3
        if slope:
            exact[2] = None
        truth = np.array([e if e is not None else v for e, v in zip(exact, size)])
        pairs = []
        if index % 2:
            pairs += [('wall:left', 'wall:right'), ('wall:front', 'wall:back')] + ([] if slope else [('floor', 'ceiling')])
        for n in names:
            walls = [PLANES[int(rng.integers(0, 2))], PLANES[2 + int(rng.integers(0, 2))]]
            heights = ['floor', 'ceiling'] if rng.random() < .5 else [PLANES[4 + int(rng.integers(0, 2))]]
            pairs += [(n, w) for w in walls + heights]
        for a in range(len(names)):
            for b in range(a):
                if names[b] in ('sofa', 'chair') or rng.random() < .25:
                    pairs.append((names[a], names[b]))
        readings = []
        for a, b in pairs:
            d = float(model(a, b, points, truth, slope))
            readings.append((a, b, float(max(0.001, round(d + rng.normal() * sigma(d, a, b), 6)))))
        x, covariance, chi2, free = adjust(names, readings, exact, truth, points, slope)
        cases.append(dict(names=names, exact=exact, slope=slope, readings=readings,
                          coordinates=[round(float(v), 9) for v in x[:3 * len(names)]],
                          dimensions={str(i): round(float(v), 9) for i, v in zip(free, x[3 * len(names):])},
                          sumOfSquares=round(float(chi2), 8),
                          # The whole covariance of the first four points (12 × 12), mm².
                          covarianceMm2=[[round(float(v) * 1e6, 6) for v in row[:12]] for row in covariance[:12]],
                          sigmasMm=[round(float(v), 6) for v in np.sqrt(np.diag(covariance)) * 1e3]))
    pathlib.Path(__file__).with_suffix('.json').write_text(json.dumps(cases) + '\n')


main()
