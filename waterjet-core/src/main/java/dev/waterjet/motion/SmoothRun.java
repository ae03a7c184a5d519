package dev.waterjet.motion;

/** A run between two speeds with jerk: a ramp up, a steady stretch, a ramp down; in m, s. Set again for each run. */
final class SmoothRun {

    private double v0;
    private double v1;
    private double peak;
    private double acceleration;
    private double jerk;
    private double upTime;
    private double upLength;
    private double downTime;
    private double downLength;
    private double lengthM;

    void set(double entry, double exit, double cap, double length, double accelerationMPerS2, double jerkMPerS3) {
        v0 = entry;
        v1 = exit;
        lengthM = length;
        acceleration = accelerationMPerS2;
        jerk = jerkMPerS3;
        peak = RampKernel.rampPeak(v0, v1, cap, length, acceleration, jerk);
        upTime = RampKernel.rampTime(v0, peak, acceleration, jerk);
        downTime = RampKernel.rampTime(peak, v1, acceleration, jerk);
        upLength = (v0 + peak) / 2 * upTime;
        downLength = (peak + v1) / 2 * downTime;
    }

    double peak() {
        return peak;
    }

    double upLength() {
        return upLength;
    }

    double downStart() {
        return lengthM - downLength;
    }

    double time() {
        return upTime + downTime + Math.max(0, lengthM - upLength - downLength) / peak;
    }

    /** Time at which the run has come to a distance. */
    double timeAt(double distanceM) {
        if (distanceM <= upLength) {
            return rampTimeAt(v0, upTime, upLength, distanceM);
        }
        if (distanceM < lengthM - downLength) {
            return upTime + (distanceM - upLength) / peak;
        }
        // a ramp down is a ramp up that runs backwards
        return time() - rampTimeAt(v1, downTime, downLength, lengthM - distanceM);
    }

    /** Speed at a distance. */
    double speedAt(double distanceM) {
        if (distanceM <= upLength) {
            return rampSpeed(v0, upTime, rampTimeAt(v0, upTime, upLength, distanceM));
        }
        if (distanceM < lengthM - downLength) {
            return peak;
        }
        return rampSpeed(v1, downTime, rampTimeAt(v1, downTime, downLength, lengthM - distanceM));
    }

    private double jerkTime(double from) {
        return Math.min(acceleration / jerk, Math.sqrt((peak - from) / jerk));
    }

    private double rampSpeed(double from, double time, double t) {
        double rise = jerkTime(from);
        if (t < rise) {
            return from + jerk * t * t / 2;
        }
        double left = time - t;
        return left > rise ? from + jerk * rise * (t - rise / 2) : peak - jerk * left * left / 2;
    }

    private double rampPlace(double from, double time, double length, double t) {
        double rise = jerkTime(from);
        if (t < rise) {
            return from * t + jerk * t * t * t / 6;
        }
        double left = time - t;
        if (left > rise) {
            double steady = t - rise;
            return from * t + jerk * rise * (steady * steady / 2 + rise * steady / 2 + rise * rise / 6);
        }
        return length - (peak * left - jerk * left * left * left / 6);
    }

    private double rampTimeAt(double from, double time, double length, double place) {
        if (place <= 0) {
            return 0;
        }
        if (place >= length) {
            return time;
        }
        double low = 0;
        double high = time;
        double t = time * place / length;
        for (int i = 0; i < 60 && high - low > 1e-15 * time; i++) {
            double off = rampPlace(from, time, length, t) - place;
            if (off > 0) {
                high = t;
            } else {
                low = t;
            }
            double next = t - off / rampSpeed(from, time, t);
            if (!(next > low && next < high)) {
                next = (low + high) / 2;
            }
            if (Math.abs(next - t) <= 1e-14 * time) {
                return next;
            }
            t = next;
        }
        return t;
    }
}
