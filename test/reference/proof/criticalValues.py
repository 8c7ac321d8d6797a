"""Two-sided critical values of the normal distribution for the largest of n residuals (Sidak), from scipy.

Run: /usr/bin/python3 criticalValues.py > criticalValues.json
"""
import json

import scipy
from scipy.stats import norm

rows = []
for chance in (0.001, 0.005, 0.01, 0.05):
    for count in (1, 2, 5, 12, 24, 100):
        each = 1 - (1 - chance) ** (1 / count)
        rows.append({"count": count, "chance": chance, "criticalValue": float(norm.isf(each / 2))})
print(json.dumps({"scipy": scipy.__version__, "rows": rows}, indent="\t"))
