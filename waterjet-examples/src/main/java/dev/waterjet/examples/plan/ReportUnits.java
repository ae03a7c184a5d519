package dev.waterjet.examples.plan;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.MassFlow;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Units;
import dev.waterjet.measure.VolumeFlow;
import dev.waterjet.part.Finding;
import dev.waterjet.part.Point;
import java.util.Map;
import javax.measure.Unit;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Power;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Speed;
import javax.measure.quantity.Volume;

/**
 * Units of a report.
 *
 * @param length of features, plates and kerfs
 * @param path of cutting lengths
 * @param feed of feed rates
 * @param pressure of pressures
 * @param mass of abrasive
 * @param volume of water
 * @param abrasiveFlow of abrasive flow rates
 * @param waterFlow of water flow rates
 * @param power of powers
 */
public record ReportUnits(
        Unit<Length> length,
        Unit<Length> path,
        Unit<Speed> feed,
        Unit<Pressure> pressure,
        Unit<Mass> mass,
        Unit<Volume> volume,
        Unit<MassFlow> abrasiveFlow,
        Unit<VolumeFlow> waterFlow,
        Unit<Power> power) {

    /** Metric trade units. */
    public static final ReportUnits METRIC = new ReportUnits(
            Units.MILLIMETRE,
            Units.METRE,
            Units.MILLIMETRE_PER_MINUTE,
            Units.MEGAPASCAL,
            Units.KILOGRAM,
            Units.LITRE,
            Units.GRAM_PER_MINUTE,
            Units.LITRE_PER_MINUTE,
            Units.KILOWATT);

    /** US trade units. */
    public static final ReportUnits INCH = new ReportUnits(
            Units.INCH,
            Units.INCH,
            Units.INCH_PER_MINUTE,
            Units.KSI,
            Units.POUND,
            Units.US_GALLON,
            Units.POUND_PER_MINUTE,
            Units.GALLON_PER_MINUTE,
            Units.HORSEPOWER);

    /** {@return these units by the metric trade units of messages, which they replace} */
    public Map<Unit<?>, Unit<?>> replaced() {
        return this.equals(METRIC)
                ? Map.of()
                : Map.of(
                        METRIC.length,
                        length,
                        METRIC.feed,
                        feed,
                        METRIC.pressure,
                        pressure,
                        METRIC.mass,
                        mass,
                        METRIC.volume,
                        volume,
                        METRIC.abrasiveFlow,
                        abrasiveFlow,
                        METRIC.waterFlow,
                        waterFlow,
                        METRIC.power,
                        power);
    }

    /**
     * Returns a finding as a line of text.
     *
     * @param finding the finding
     * @return its place, if it has one, and its sentence, in these units
     */
    public String text(Finding finding) {
        Point place = finding.place();
        return (place == null ? "" : "at " + text(place) + ": ") + finding.text(replaced());
    }

    /**
     * Returns a point as text.
     *
     * @param point the point
     * @return its coordinates in these units
     */
    public String text(Point point) {
        return "(" + QuantityText.print(Kind.LENGTH, Kind.LENGTH.of(point.xSi()), length, 4) + ", "
                + QuantityText.print(Kind.LENGTH, Kind.LENGTH.of(point.ySi()), length, 4) + ")";
    }
}
