"""A straight springy wire clamped level at one end, with a weight at the other: how far the end sinks and how far it
still reaches, as shares of the wire's length, for weights in B / length². By quadrature of the elastica
B t'^2 / 2 = P (sin a - sin t), whose end slopes by a: scipy's quad and brentq. Writes tests/oracles/data/bent_beams.csv; the
column `recalled` is the sinking in the table of Bisshopp and Drucker (Large deflection of cantilever beams, Quarterly of
Applied Mathematics 3, 1945), from memory.
"""
import numpy as np
from scipy.integrate import quad
from scipy.optimize import brentq

RECALLED = {0.25: "", 1: 0.302, 2: 0.494, 3: 0.603, 4: 0.670, 5: 0.714, 10: 0.811}


def along(a, weight):
    """What of the wire from the clamp on, as integrals over the slope; x^2 = a - t takes out the root at the end."""
    def integral(f):
        inner = lambda x: 2 * x * f(a - x * x) / np.sqrt(2 * weight * (np.sin(a) - np.sin(a - x * x)))
        return quad(inner, 1e-9, np.sqrt(a), epsabs=1e-12, epsrel=1e-12)[0]
    return integral


print("weight,sinks,reaches,recalled,source")
for load, recalled in RECALLED.items():
    a = brentq(lambda a: along(a, load)(lambda t: 1.0) - 1, 1e-6, np.pi / 2 - 1e-9)
    print(f"{load},{along(a, load)(np.sin):.6f},{along(a, load)(np.cos):.6f},{recalled},computed by tests/oracles/scripts/bent_beams.py; recalled of Bisshopp and Drucker 1945")
