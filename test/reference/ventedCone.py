"""Movement of the cone of a vented box, from its mechanical and acoustical circuit as a state space.

Writes ventedCone.json. The circuit is solved as it is built, without any displacement function: mass, spring and damping of
the driver, the air in the box as a spring, the air in the port as a mass, no losses in box and port.
Fourth-order Butterworth alignment: tuning = resonance, compliance ratio = square root of 2, total Q = 1 / sqrt(4 + 2 sqrt 2).
Source of the circuit and of the alignment: R. H. Small, Vented-Box Loudspeaker Systems, Part I, JAES 21 (1973) 363-372, fig. 2
and part II, 438-444; solved by numpy.linalg.solve at each frequency.
"""

import json
import pathlib

import numpy as np

RESONANCE_HZ = 50.0
COMPLIANCE_RATIO = np.sqrt(2.0)
TOTAL_Q = 1 / np.sqrt(4 + 2 * np.sqrt(2))
MASS_KG = 0.02
AREA_M2 = 0.022

w0 = 2 * np.pi * RESONANCE_HZ
spring = MASS_KG * w0**2
damping = MASS_KG * w0 / TOTAL_Q
# m^3/Pa; the box is stiffer than the suspension by the compliance ratio.
box = AREA_M2**2 / spring / COMPLIANCE_RATIO
port = 1 / (w0**2 * box)

# States: displacement of the cone outwards (m), its velocity (m/s), pressure in the box (Pa), flow out of the port (m^3/s).
a = np.array(
    [
        [0, 1, 0, 0],
        [-spring / MASS_KG, -damping / MASS_KG, AREA_M2 / MASS_KG, 0],
        [0, -AREA_M2 / box, 0, -1 / box],
        [0, 0, 1 / port, 0],
    ]
)
b = np.array([[0], [1 / MASS_KG], [0], [0]])
# Outputs: displacement, and the flow of cone and port together, whose change in time is what is heard.
c = np.array([[1, 0, 0, 0], [0, AREA_M2, 0, 1]])
frequencies = 20 * 2 ** (np.arange(29) / 6)


states = np.array([np.linalg.solve(2j * np.pi * f * np.eye(4) - a, b)[:, 0] for f in frequencies])


def response(output):
    return states @ c[output]


cone = np.abs(response(0)) ** 2
heard = np.abs(response(1) * 2 * np.pi * frequencies) ** 2
pathlib.Path(__file__).with_suffix(".json").write_text(
    json.dumps(
        {
            "madeWith": f"numpy {np.__version__}",
            "resonanceHz": RESONANCE_HZ,
            "frequenciesHz": frequencies.tolist(),
            "coneEnergy": (cone / cone[0]).tolist(),
            "heardEnergy": (heard / heard[-1]).tolist(),
        },
        indent="\t",
    )
    + "\n"
)
