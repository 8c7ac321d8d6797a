"""Modes of rooms that are no boxes, by linear triangles and scipy's sparse eigsh, the reference for test/study/room.

Run: /usr/bin/python3 test/reference/roomModes.py   (scipy 1.10.1)
Writes roomModes.json beside itself. An independent way: a fine grid of linear triangles with consistent mass, on two
grid widths whose results are extrapolated (the error of linear elements falls with the square of the width).
"""
import json
import pathlib

import numpy as np
from scipy.sparse import coo_matrix
from scipy.sparse.linalg import eigsh

speed = 343.0
top = 125.0


def triangles(points, cells):
    """Stiffness and consistent mass of linear triangles."""
    rows, columns, stiff, mass = [], [], [], []
    for cell in cells:
        p = points[cell]
        edge = np.array([p[2] - p[1], p[0] - p[2], p[1] - p[0]])
        area = abs(edge[0, 0] * edge[1, 1] - edge[0, 1] * edge[1, 0]) / 2
        k = edge @ edge.T / (4 * area)
        m = area / 12 * (np.ones((3, 3)) + np.eye(3))
        for a in range(3):
            for b in range(3):
                rows.append(cell[a])
                columns.append(cell[b])
                stiff.append(k[a, b])
                mass.append(m[a, b])
    n = len(points)
    return coo_matrix((stiff, (rows, columns)), (n, n)).tocsc(), coo_matrix((mass, (rows, columns)), (n, n)).tocsc()


def under(heights, width, n, m):
    """Grid below a broken line of heights [(at, height), …]: n columns to the metre, m rows."""
    xs = np.unique(np.concatenate([np.linspace(a[0], b[0], max(2, int(np.ceil((b[0] - a[0]) * n)) + 1)) for a, b in zip(heights, heights[1:])]))
    tops = np.interp(xs, [h[0] for h in heights], [h[1] for h in heights])
    points = np.array([(x, t * j / m) for x, t in zip(xs, tops) for j in range(m + 1)])
    cells = []
    for i in range(len(xs) - 1):
        for j in range(m):
            a, b = i * (m + 1) + j, (i + 1) * (m + 1) + j
            cells += [(a, b, b + 1), (a, b + 1, a + 1)] if (i + j) % 2 else [(a, b, a + 1), (b, b + 1, a + 1)]
    return points, np.array(cells)


def corner(width, length, missing_width, missing_length, step):
    """Grid of a plan whose back right corner is missing; step divides all sizes."""
    nx, ny = round(width / step), round(length / step)
    number, points, cells = {}, [], []

    def node(i, j):
        if (i, j) not in number:
            number[i, j] = len(points)
            points.append((i * step, j * step))
        return number[i, j]

    for i in range(nx):
        for j in range(ny):
            if (i + 0.5) * step > width - missing_width and (j + 0.5) * step > length - missing_length:
                continue
            a, b, c, d = node(i, j), node(i + 1, j), node(i + 1, j + 1), node(i, j + 1)
            cells += [(a, b, c), (a, c, d)] if (i + j) % 2 else [(a, b, d), (b, c, d)]
    return np.array(points), np.array(cells)


def section(grid):
    stiffness, mass = triangles(*grid)
    values = eigsh(stiffness, 40, mass, sigma=-0.1, return_eigenvectors=False)
    return np.sort(np.maximum(values, 0))


def frequencies(coarse, fine, ratio, depth):
    values = fine + (fine - coarse) / (ratio**2 - 1)
    values[0] = 0
    found = [speed / (2 * np.pi) * np.sqrt(v + (n * np.pi / depth) ** 2) for v in values for n in range(20)]
    return sorted(f for f in found if f <= top)


def ceiling(heights, width, depth):
    return frequencies(section(under(heights, width, 16, 40)), section(under(heights, width, 32, 80)), 2, depth)


rooms = {
    "sloped": {"heights": [[0, 2.0], [4.0, 3.0]], "widthMetres": 4.0, "lengthMetres": 5.0},
    "gabled": {"heights": [[0, 1.4], [2.3, 3.1], [4.6, 1.4]], "widthMetres": 4.6, "lengthMetres": 5.4},
    "broken": {"heights": [[0, 1.1], [1.2, 2.4], [3.6, 2.4], [4.8, 0.9]], "widthMetres": 4.8, "lengthMetres": 6.1},
}
out = {name: {**room, "frequenciesHertz": ceiling([tuple(h) for h in room["heights"]], room["widthMetres"], room["lengthMetres"])} for name, room in rooms.items()}
ell = {"widthMetres": 5.0, "lengthMetres": 6.0, "heightMetres": 2.5, "missingWidthMetres": 2.0, "missingLengthMetres": 2.5}
sizes = (5.0, 6.0, 2.0, 2.5)
out["corner"] = {**ell, "frequenciesHertz": frequencies(section(corner(*sizes, 0.125)), section(corner(*sizes, 0.0625)), 2, 2.5)}
pathlib.Path(__file__).with_suffix(".json").write_text(json.dumps(out, indent=1) + "\n")
