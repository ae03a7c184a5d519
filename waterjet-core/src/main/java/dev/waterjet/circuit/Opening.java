package dev.waterjet.circuit;

import java.util.Comparator;
import java.util.List;

/** Open share of a valve over time: linear between break points. */
final class Opening {

    private final double[] times;
    private final double[] shares;

    Opening(double atStart, List<ValveEvent> events) {
        List<ValveEvent> ordered = events.stream()
                .sorted(Comparator.comparingDouble(ValveEvent::beginS))
                .toList();
        times = new double[2 * ordered.size() + 1];
        shares = new double[2 * ordered.size() + 1];
        shares[0] = atStart;
        times[0] = Double.NEGATIVE_INFINITY;
        int count = 1;
        for (ValveEvent event : ordered) {
            // a motion that begins ends the one before it
            double share = at(event.beginS(), count);
            while (times[count - 1] > event.beginS()) {
                count--;
            }
            times[count] = event.beginS();
            shares[count++] = share;
            times[count] = event.beginS() + event.durationS();
            shares[count++] = event.opening();
        }
        for (int i = count; i < times.length; i++) {
            times[i] = Double.POSITIVE_INFINITY;
            shares[i] = shares[count - 1];
        }
    }

    /** Share at a time, that after a jump. */
    double at(double atS) {
        return at(atS, times.length);
    }

    private double at(double atS, int count) {
        int i = count - 1;
        while (times[i] > atS) {
            i--;
        }
        if (i + 1 >= count || Double.isInfinite(times[i]) || Double.isInfinite(times[i + 1])) {
            return shares[i];
        }
        return shares[i] + (shares[i + 1] - shares[i]) * (atS - times[i]) / (times[i + 1] - times[i]);
    }
}
