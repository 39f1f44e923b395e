"""Makes filters.csv: responses of third-octave filters, designed by SciPy.

Butterworth band-passes of 6 pole pairs, scipy.signal.butter(6, edges, 'bandpass', fs=rate, output='sos'), edges f 10^(-1/20) and
f 10^(1/20) about f = 1000 10^(n/10) Hz (IEC 61260-1:2014, base 10), at the rate at which the filter runs: the sample rate, halved as
often as it stays four times the upper edge of the octave (thirds 3k to 3k + 2 from 25 Hz) or more. scipy.signal.sosfreqz at some
frequencies about the middle.

Lines: sample rate;third from 0 at 25 Hz;rate it runs at;frequency;response in dB

Run: python3 filters.py > filters.csv   (made with SciPy 1.17.1, NumPy 2.4.6)
"""
import numpy as np
from scipy import signal

print("# Responses of third-octave filters.")
print("# Made by filters.py beside this file: SciPy 1.17.1.")
print("# sample rate;third;rate it runs at;frequency;response")
for fs in (44100, 48000, 96000):
    for third in (0, 1, 8, 16, 17, 22, 26, 27, 28, 29):
        middle = 1000 * 10 ** ((third - 16) / 10)
        low, high = middle * 10 ** -0.05, middle * 10 ** 0.05
        if high > 0.48 * fs:
            continue
        top = 1000 * 10 ** ((3 * (third // 3) + 2 - 16 + 0.5) / 10)
        rate = fs
        while rate / 2 >= 4 * top:
            rate /= 2
        sos = signal.butter(6, [low, high], "bandpass", fs=rate, output="sos")
        for ratio in (0.5, 0.7, 0.85, 0.8912509381337456, 0.95, 1, 1.05, 1.1220184543019633, 1.2, 1.5, 2):
            frequency = middle * ratio
            if frequency < 0.499 * rate:
                w, h = signal.sosfreqz(sos, worN=[frequency], fs=rate)
                print(f"{fs};{third};{rate};{frequency!r};{20 * np.log10(abs(h[0]))!r}".replace("np.float64(", "").replace(")", ""))
