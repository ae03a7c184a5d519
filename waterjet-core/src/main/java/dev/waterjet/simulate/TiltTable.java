package dev.waterjet.simulate;

import dev.waterjet.kerf.HeadTilt;
import java.util.Arrays;

/** Displacement of the jet over depth at distances along a path, linear between them; in m. */
final class TiltTable {

    private final double[] distanceM;
    private final double[] x;
    private final double[] y;

    TiltTable(double[] distanceM, double[] x, double[] y) {
        this.distanceM = distanceM;
        this.x = x;
        this.y = y;
    }

    double x(double atM) {
        return at(x, atM);
    }

    double y(double atM) {
        return at(y, atM);
    }

    private double at(double[] values, double atM) {
        int found = Arrays.binarySearch(distanceM, atM);
        if (found >= 0) {
            return values[found];
        }
        int next = -found - 1;
        if (next == 0 || next == values.length) {
            return values[next == 0 ? 0 : next - 1];
        }
        double share = (atM - distanceM[next - 1]) / (distanceM[next] - distanceM[next - 1]);
        return values[next - 1] + share * (values[next] - values[next - 1]);
    }

    HeadTilt tilt(double atM) {
        return HeadTilt.ofSi(x(atM), y(atM));
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof TiltTable that
                && Arrays.equals(distanceM, that.distanceM)
                && Arrays.equals(x, that.x)
                && Arrays.equals(y, that.y);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(distanceM) + 31 * Arrays.hashCode(x) + 961 * Arrays.hashCode(y);
    }
}
