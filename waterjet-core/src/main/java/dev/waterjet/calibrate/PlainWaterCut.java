package dev.waterjet.calibrate;

import dev.waterjet.feed.PlainWaterFeed;
import dev.waterjet.hydraulics.WaterJet;
import dev.waterjet.material.Material;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Experimental;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.NoSolutionException;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;

/**
 * Separation cut of a soft material by pure water. A list of them fits a {@link PlainWaterFeed}.
 *
 * <pre>{@code
 * PlainWaterFeed shop = PlainWaterCut.fit(material, List.of(
 *         PlainWaterCut.of(jet.water(), millimetres(5), millimetres(40), millimetresPerMinute(2000)),
 *         PlainWaterCut.of(jet.water(), millimetres(5), millimetres(24), millimetresPerMinute(4000))), 0.1).model();
 * }</pre>
 *
 * @param jet water jet
 * @param standOff distance from the orifice to the workpiece, 0 or more
 * @param depth depth that was just separated, above 0
 * @param feed feed rate of the cut, above 0
 */
@Experimental
public record PlainWaterCut(WaterJet jet, Quantity<Length> standOff, Quantity<Length> depth, Quantity<Speed> feed)
        implements Described, Serializable {

    private static final int MIN_CUTS = 2;

    /**
     * Checks the components.
     *
     * @param jet water jet
     * @param standOff distance from the orifice to the workpiece, 0 or more
     * @param depth depth that was just separated, above 0
     * @param feed feed rate of the cut, above 0
     * @throws dev.waterjet.measure.DomainException if a component is out of range
     */
    public PlainWaterCut {
        Objects.requireNonNull(jet, "jet");
        Objects.requireNonNull(standOff, "standOff");
        Objects.requireNonNull(depth, "depth");
        Objects.requireNonNull(feed, "feed");
        standOff =
                Kind.LENGTH.of(Require.notNegative("stand-off distance", Kind.LENGTH.si(standOff), Units.MILLIMETRE));
        depth = Kind.LENGTH.of(Require.positive("depth of the cut", Kind.LENGTH.si(depth), Units.MILLIMETRE));
        feed = Kind.SPEED.of(
                Require.positive("feed rate of the cut", Kind.SPEED.si(feed), Units.MILLIMETRE_PER_MINUTE));
    }

    /**
     * Returns a cut.
     *
     * @param jet water jet
     * @param standOff distance from the orifice to the workpiece, 0 or more
     * @param depth depth that was just separated, above 0
     * @param feed feed rate of the cut, above 0
     * @return the cut
     */
    public static PlainWaterCut of(
            WaterJet jet, Quantity<Length> standOff, Quantity<Length> depth, Quantity<Speed> feed) {
        Objects.requireNonNull(jet, "jet");
        Objects.requireNonNull(standOff, "standOff");
        Objects.requireNonNull(depth, "depth");
        Objects.requireNonNull(feed, "feed");
        return new PlainWaterCut(jet, standOff, depth, feed);
    }

    /**
     * Fits depth and exponents of the pure-water model to separation cuts, by least squares of the logarithm of the depth together
     * with prior observations of the exponents: 1 &plusmn; 0.3 of the orifice bore, 1.5 &plusmn; 0.3 of the pressure, 0.9 &plusmn;
     * 0.2 of the feed rate. What the cuts do not vary keeps its prior. The threshold pressure is
     * fitted too if there are three cuts or more, their pressures on the axis span a factor of 1.3, and they tell it; else it is
     * 0.
     *
     * @param material material of the cuts
     * @param cuts two cuts or more
     * @param relativeDeviation relative standard deviation of the depth of a cut, 0.001 to 1
     * @return the model, with a scatter of a feed rate of 25 % (assumed) or more if the cuts scatter more, and its fit on natural
     *     logarithms of the depth in m; the last observations of the fit are the priors
     * @throws NoSolutionException if there are fewer than two cuts, code {@code too-few-plain-water-cuts}, or the fit does not converge
     */
    public static FittedModel<PlainWaterFeed> fit(
            Material material, List<PlainWaterCut> cuts, double relativeDeviation) {
        Objects.requireNonNull(material, "material");
        List<PlainWaterCut> all = List.copyOf(Objects.requireNonNull(cuts, "cuts"));
        Require.between("relative deviation of the depth", relativeDeviation, 0.001, 1, Units.ONE, "");
        if (all.size() < MIN_CUTS) {
            throw new NoSolutionException(Message.of(
                            "too-few-plain-water-cuts",
                            "{cuts} separation cuts by pure water; a fit requires at least {minimum}, and one alone"
                                    + " scales the model by itself")
                    .with("cuts", all.size())
                    .with("minimum", MIN_CUTS));
        }
        return new PlainWaterFit(material, all, relativeDeviation).fit();
    }

    double depthSi() {
        return Kind.LENGTH.si(depth);
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("plain water cut")
                .put("jet", jet)
                .put("stand_off", Kind.LENGTH, Kind.LENGTH.si(standOff))
                .put("depth", Kind.LENGTH, Kind.LENGTH.si(depth))
                .put("feed", Kind.SPEED, Kind.SPEED.si(feed))
                .map();
    }

    @Override
    public String toString() {
        return QuantityText.forPeople(Kind.LENGTH, depth) + " cut by pure water at "
                + QuantityText.forPeople(Kind.SPEED, feed);
    }
}
