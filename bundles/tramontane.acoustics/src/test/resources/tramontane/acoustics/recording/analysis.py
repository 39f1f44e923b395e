"""Makes analysis.csv: what SciPy finds in sounds that the test makes by the same rule.

The sounds, n = 0 .. frames - 1, v a linear congruential sequence (D. E. Knuth's MMIX: s = 6364136223846793005 s +
1442695040888963407 modulo 2^64 from s = 1, v = 2 floor(s/2^11)/2^53 - 1):
  white   0.3 v
  fan     0.01 + y + 0.02 sin(2 pi 350 n/fs) + 0.01 sin(2 pi 700.4 n/fs) + 0.005 sin(2 pi 2345.6 n/fs), y = 0.98 y + 0.02 v
  swell   white times (0.2 + 0.8 n/frames)

Levels re a full-scale sine, without the mean of the samples:
  Z           mean square
  A, C        spectrum of the whole sound, numpy.fft.rfft, weighted line by line by the formulas of IEC 61672-1:2013 annex E
  fast        the sound weighted as for A and brought back by irfft; squared from 0.1 s on; scipy.signal.lfilter with the time constant
              0.125 s from nothing; the highest
  line k      scipy.signal.welch, 'hann', nperseg 65536, noverlap 32768, no detrending, density times spacing, all lines times one
              factor that makes their sum the mean square; power, not level, times 2
  band i      the sound later by 15 samples of each rate that is halved, brought to the rate at which the filter runs by
              scipy.signal.resample (in frequency, exact); scipy.signal.butter(6, edges, 'bandpass', output='sos') at that rate, sosfilt
              from rest, mean square after the first 8/width s, at most a quarter

Lines: sound;sample rate;frames;what;index;value

Run: python3 analysis.py > analysis.csv   (made with SciPy 1.17.1, NumPy 2.4.6)
"""
import numpy as np
from scipy import signal

F1, F2, F3, F4 = 20.598997, 107.65265, 737.86223, 12194.217


def chance(count):
    s, values = 1, np.empty(count)
    for i in range(count):
        s = (6364136223846793005 * s + 1442695040888963407) % 2**64
        values[i] = 2 * (s >> 11) / 2**53 - 1
    return values


def a(f):
    q = f * f
    return F4**2 * q**2 / ((q + F1**2) * np.sqrt((q + F2**2) * (q + F3**2)) * (q + F4**2))


def c(f):
    q = f * f
    return F4**2 * q / ((q + F1**2) * (q + F4**2))


def sound(what, fs, frames):
    n = np.arange(frames)
    v = chance(frames)
    if what == "white":
        return 0.3 * v
    if what == "swell":
        return 0.3 * v * (0.2 + 0.8 * n / frames)
    y = signal.lfilter([0.02], [1, -0.98], v)
    return (0.01 + y + 0.02 * np.sin(2 * np.pi * 350 * n / fs) + 0.01 * np.sin(2 * np.pi * 700.4 * n / fs)
            + 0.005 * np.sin(2 * np.pi * 2345.6 * n / fs))


def level(square):
    return 10 * np.log10(2 * square)


print("# Levels, lines and bands of some sounds.")
print("# Made by analysis.py beside this file: SciPy 1.17.1.")
print("# sound;sample rate;frames;what;index;value")
for what, fs in (("white", 48000), ("fan", 48000), ("swell", 48000), ("fan", 44100)):
    frames = 65536 + 7 * 32768
    x = sound(what, fs, frames)
    x = x - np.mean(x)
    head = f"{what};{fs};{frames}"
    spectrum = np.fft.rfft(x)
    frequencies = np.fft.rfftfreq(frames, 1 / fs)
    square = np.mean(x**2)
    print(f"{head};Z;0;{float(level(square))!r}")
    for name, weight in (("A", a), ("C", c)):
        weighted = np.fft.irfft(spectrum * weight(frequencies) / weight(1000.0), frames)
        print(f"{head};{name};0;{float(level(np.mean(weighted**2)))!r}")
        if name == "A":
            forget = -np.expm1(-1 / (0.125 * fs))
            fast = signal.lfilter([forget], [1, forget - 1], weighted[fs // 10:]**2)
            print(f"{head};fast;0;{float(level(np.max(fast)))!r}")
    f, power = signal.welch(x, fs, "hann", 65536, 32768, detrend=False, scaling="density")
    power = power * (f[1] - f[0])
    power *= square / np.sum(power)
    for k in (1, 2, 10, 477, 478, 479, 520, 956, 1000, 3203, 10000, 20000, 32767):
        print(f"{head};line;{k};{float(2 * power[k])!r}")
    for third in range(30):
        middle = 1000 * 10 ** ((third - 16) / 10)
        low, high = middle * 10 ** -0.05, middle * 10 ** 0.05
        if high > 0.48 * fs:
            continue
        top = 1000 * 10 ** ((3 * (third // 3) + 2 - 16 + 0.5) / 10)
        late, factor = 0, 1
        while fs / factor / 2 >= 4 * top:
            late += 15 * factor
            factor *= 2
        count = frames // factor
        given = signal.resample(np.concatenate((np.zeros(late), x[:frames - late])), count) if factor > 1 else x
        y = signal.sosfilt(signal.butter(6, [low, high], "bandpass", fs=fs / factor, output="sos"), given)
        skip = int(min(8 / (high - low) * fs / factor, count // 4))
        print(f"{head};band;{third};{float(level(np.mean(y[skip:] ** 2)))!r}")
