"""Writes fixture.json: error function and normal interval probabilities to 40 digits.

Run in this folder:  python3 generate.py
Made with mpmath 1.3.0; the version that made the file is written into it. No random numbers.
"""
import json

import mpmath as mp

mp.mp.dps = 60


def text(value):
    return float(mp.nstr(value, 20))


def log_probability(low, high):
    low, high = mp.mpf(low), mp.mpf(high)
    if low > 0:
        low, high = -high, -low
    root = mp.sqrt(2)
    return mp.log((mp.erfc(-high / root) - mp.erfc(-low / root)) / 2)


points = [-5.0, -2.0, -0.46875, -0.3, 0.0, 1e-9, 0.2, 0.46875, 0.5, 1.0, 2.5, 4.0, 4.0625, 7.0, 15.0, 26.0]
scaled = [-20.0, -5.0, -1.0, -0.2, 0.0, 0.3, 0.9, 3.0, 4.5, 12.0, 100.0, 1e6]
intervals = [
    (-1.0, 1.0), (-0.5, 2.0), (0.0, 1.0), (2.0, 3.0), (-3.0, -2.0), (8.0, 9.0), (20.0, 20.5),
    (-20.5, -20.0), (40.0, 41.0), (-200.0, -199.0), (1.0, 1.000001), (0.1, 0.12), (-6.0, -5.999),
    (-30.0, -29.9995), (30.0, 31.0), (-0.001, 0.001), (-12.0, 9.0), (-9.0, 30.0), (5.0, 5.02),
]


def t_quantile(p, df):
    """Root of the upper tail, matched as a logarithm; p is the double itself."""
    p, df = mp.mpf(p), mp.mpf(df)
    half = mp.mpf(1) / 2

    def tail(t):
        return mp.betainc(df / 2, half, 0, df / (df + t * t), regularized=True) / 2

    start = {0.9999999: 21.3}.get(float(p), 0.5) if df < 1 else mp.log(mp.mpf("2.5"))
    return mp.e ** mp.findroot(lambda x: mp.log(tail(mp.e**x) / (1 - p)), start)


t_points = [(0.9999999, 0.7), (0.975, 0.7), (0.99, 6.0), (0.975, 16.7), (0.995, 100.0), (0.99, 1e5)]
out = {
    "made_by": "generate.py",
    "mpmath": mp.__version__,
    "erf": [[x, text(mp.erf(mp.mpf(x)))] for x in points],
    "erfc": [[x, text(mp.erfc(mp.mpf(x)))] for x in points],
    "scaledErfc": [[x, text(mp.exp(mp.mpf(x) ** 2) * mp.erfc(mp.mpf(x)))] for x in scaled],
    "normalLogProbability": [[a, b, text(log_probability(a, b))] for a, b in intervals],
    "studentTQuantile": [[p, df, text(t_quantile(p, df))] for p, df in t_points],
}
with open("fixture.json", "w", encoding="utf-8") as file:
    json.dump(out, file, indent=1)
    file.write("\n")
