package dev.waterjet.examples.plan;

import dev.waterjet.examples.chart.Chart;
import dev.waterjet.feed.FeedCurve;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Units;
import dev.waterjet.quality.QualityIndexTable;
import java.util.Arrays;
import javax.measure.quantity.Length;

/** Feed over thickness with its interval, and the point that was chosen. */
final class FeedChart {

    private static final int POINTS = 60;

    private FeedChart() {}

    static String svg(PlanReport report) {
        double thickness = report.workpiece().thicknessSi();
        QuantityArray<Length> thicknesses = QuantityArray.evenly(
                Kind.LENGTH, Kind.LENGTH.of(thickness * 0.4), Kind.LENGTH.of(thickness * 2), POINTS);
        FeedCurve curve = report.plan()
                .setup()
                .feedModel()
                .curve(
                        report.jet(),
                        report.workpiece().material(),
                        QualityIndexTable.standard().index(report.quality()),
                        thicknesses);
        double[] x = thicknesses.to(report.units().length());
        double[] feed = curve.feeds().to(report.units().feed());
        double[] lower = new double[feed.length];
        double[] upper = new double[feed.length];
        for (int i = 0; i < feed.length; i++) {
            lower[i] = Units.fromSi(
                    Kind.SPEED.si(curve.feed(i).lower(0.95)), report.units().feed());
            upper[i] = Units.fromSi(
                    Kind.SPEED.si(curve.feed(i).upper(0.95)), report.units().feed());
        }
        double chosen = report.feed().to(report.units().feed());
        String length = " " + Units.symbol(report.units().length());
        String speed = " " + Units.symbol(report.units().feed());
        double plate = Units.fromSi(thickness, report.units().length());
        String alt = "For " + report.workpiece().material().name() + " and "
                + report.quality().label()
                + " cut quality the feed rate decreases from " + QuantityText.round(feed[0], 3) + speed + " at "
                + QuantityText.round(x[0], 3) + length + " to " + QuantityText.round(feed[POINTS - 1], 3) + speed
                + " at "
                + QuantityText.round(x[POINTS - 1], 3) + length + "; this plan has " + QuantityText.round(chosen, 3)
                + speed + " at " + QuantityText.round(plate, 3) + length + ".";
        return Chart.of("Feed rate over thickness", alt)
                .x("thickness [" + length.strip() + "]")
                .y("feed rate [" + speed.strip() + "]")
                .yFrom(0, Arrays.stream(upper).max().orElse(1) * 1.02)
                .band("95 % interval", x, lower, upper)
                .line(report.quality().label() + " cut quality", x, feed)
                .points("this plan", new double[] {plate}, new double[] {chosen})
                .svgInPage(400, 280);
    }
}
