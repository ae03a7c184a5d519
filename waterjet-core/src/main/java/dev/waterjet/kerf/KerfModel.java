package dev.waterjet.kerf;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.HasEvidence;
import dev.waterjet.evidence.ValidityRange;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import javax.measure.Quantity;
import javax.measure.quantity.Angle;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;

/**
 * Model of the walls of a kerf, from the erosive dose that a pass leaves across it.
 *
 * <pre>{@code
 * CutConditions cut = CutConditions.of(jet, plate, MachinabilityFeed.published());
 * Kerf kerf = KerfModel.standard().kerf(cut, millimetresPerMinute(120));
 * Estimate<Length> offset = kerf.offset();
 * Estimate<Angle> taper = kerf.taperPerSide();
 * }</pre>
 *
 * <p>Abrasive particles are distributed across the jet approximately as a Gaussian (Balz et al., Exp. Fluids 2013), and
 * their dose adds up. A pass at the feed u leaves the dose exp(-y<sup>2</sup> / (2 s<sup>2</sup>)) / u at a distance y from the tool path,
 * and a dose D separates the depth that the feed 1/D separates. At the depth z the dose reaches y<sub>D</sub> = s
 * sqrt(2 ln(u<sub>sep</sub>(z)/u)), with u<sub>sep</sub>(z) the feed that just separates that depth; and no particle travels outside the
 * diverging jet, y<sub>J</sub> = d/2 + (S + z) tan &alpha;. The wall is at a smooth minimum of both, y = (y<sub>D</sub><sup>-8</sup> +
 * y<sub>J</sub><sup>-8</sup>)<sup>-1/8</sup>. One formula gives the V of a fast cut, parallel walls, the reverse taper of a slow cut and the barrel of
 * thick plate. {@link KerfProfile} is the same law.
 *
 * <p>Symbols: s spread of the dose, given as a ratio to d; d exit bore of the focusing tube, worn as it is; S stand-off; alpha
 * half-angle of the jet; h thickness; lengths in m. Wear widens jet and dose; its effect on the depth is part of the feed model.
 *
 * <p>Evidence: the form is derived. s/d = 0.2518 within 20 % is assumed: it is a Gaussian depth of 0.27 bores at the exponent
 * 1.15 of machinability. alpha = 1.38&deg;, for a new set-up 0.95&deg; to 1.81&deg; (95 %), is fitted: a mixed-effects
 * evaluation of entry widths over stand-off in 432 grooves (titanium, a nickel alloy, stainless steel; two tubes; a public data
 * repository, AWJM-Prediction by Dakshil2003, evaluated here, its rows not reproduced). That a width scatters by 0.03 mm,
 * below an exit bore of 0.5 mm by 0.06 bores, is assumed. Fit the model to measured widths. Range: it was compared with
 * published tapers of plates of 5 to 12.5 exit bores, cut with tubes of 0.8 mm to 1 mm, under assumed conditions. In thinner sheet it overestimates the taper (where 0 to 1.5
 * degrees per side is common practice, no source); in thicker plate the barrel depends on a divergence that is not damped in
 * the slot. Outside the range a kerf has a caution.
 *
 * <p>Worked number: tube 1 mm, stand-off 2 mm, 10 mm thick, index 3: entry 1.096 mm, exit 0.800 mm, taper 0.85 degrees per
 * side.
 */
public final class KerfModel implements HasEvidence, Described, Serializable {

    private static final long serialVersionUID = 1L;

    private static final KerfModel STANDARD = new KerfModel(new Values(
            AssumedKerf.DOSE_RATIO, AssumedKerf.SLOPE, AssumedKerf.SPREAD, LagModel.standard(), AssumedKerf.EVIDENCE));

    /** Checked content, and the serial form. The spread is without the uncertainty of a separation depth. */
    private record Values(double doseRatio, double spreadSlope, KerfSpread spread, LagModel lagModel, Evidence evidence)
            implements Serializable {

        Values {
            doseRatio = Require.positive("spread of the dose over the bore", doseRatio, Units.ONE);
            spreadSlope = Require.notNegative("slope of the edge of the jet", spreadSlope, Units.ONE);
            Objects.requireNonNull(spread, "spread");
            Objects.requireNonNull(lagModel, "lagModel");
            Objects.requireNonNull(evidence, "evidence");
        }

        private Object readResolve() {
            return new KerfModel(this);
        }
    }

    private final transient Values values;

    private KerfModel(Values values) {
        this.values = values;
    }

    /** {@return the model with assumed numbers} */
    public static KerfModel standard() {
        return STANDARD;
    }

    /**
     * Returns a range for the evidence of a kerf model: a kerf outside it has a caution.
     *
     * @param minimumBores minimum thickness of the workpiece over the exit bore of the focusing tube
     * @param maximumBores maximum of that ratio
     * @return the range
     */
    public static ValidityRange<Dimensionless> thicknessRange(double minimumBores, double maximumBores) {
        return KerfRange.of(minimumBores, maximumBores);
    }

    private KerfModel with(double doseRatio, double spreadSlope, KerfSpread spread, Evidence evidence) {
        return new KerfModel(new Values(doseRatio, spreadSlope, spread, values.lagModel, evidence));
    }

    /**
     * Returns this model with another spread of the dose, not correlated with the half-angle.
     *
     * @param ratio standard deviation of the dose across the kerf over the exit bore, above 0
     * @param relativeUncertainty its relative standard uncertainty, 0 to 3
     * @param evidence evidence for the model with that spread
     * @return the model with that spread
     */
    public KerfModel withDoseSpread(double ratio, double relativeUncertainty, Evidence evidence) {
        return with(ratio, values.spreadSlope, values.spread.withDose(relativeUncertainty), evidence);
    }

    /**
     * Returns this model with another half-angle of the jet, not correlated with the spread of the dose.
     *
     * @param halfAngle angle between the edge of the jet and its axis, from 0 to 45 degrees
     * @param relativeUncertainty its relative standard uncertainty, 0 to 3
     * @param evidence evidence for the model with that angle
     * @return the model with that angle
     */
    public KerfModel withHalfAngle(Quantity<Angle> halfAngle, double relativeUncertainty, Evidence evidence) {
        Objects.requireNonNull(halfAngle, "halfAngle");
        double angle = Require.between(
                "half-angle of the jet",
                Kind.ANGLE.si(halfAngle),
                0,
                Math.PI / 4,
                Units.DEGREE,
                "a jet diverges by few degrees");
        return with(values.doseRatio, Math.tan(angle), values.spread.withSlope(relativeUncertainty), evidence);
    }

    /**
     * Returns this model with a correlation of its two numbers, as a fit finds it.
     *
     * @param correlation correlation of the logarithms of dose spread and half-angle, -1 to 1
     * @return the model with that correlation
     */
    public KerfModel withCorrelation(double correlation) {
        KerfSpread changed = values.spread.withCorrelation(correlation);
        return with(values.doseRatio, values.spreadSlope, changed, values.evidence);
    }

    /**
     * Returns this model with another scatter of single widths.
     *
     * @param deviation standard deviation of a measured width about the model, 0 or more
     * @return the model with that scatter
     */
    public KerfModel withWidthScatter(Quantity<Length> deviation) {
        Objects.requireNonNull(deviation, "deviation");
        KerfSpread changed = values.spread.withWidth(Kind.LENGTH.si(deviation));
        return with(values.doseRatio, values.spreadSlope, changed, values.evidence);
    }

    /**
     * Returns this model with another lag model.
     *
     * @param lagModel lag model
     * @return the model with that lag model
     */
    public KerfModel withLag(LagModel lagModel) {
        return new KerfModel(
                new Values(values.doseRatio, values.spreadSlope, values.spread, lagModel, values.evidence));
    }

    /** {@return the spread of the dose: its standard deviation across the kerf over the exit bore} */
    public double doseRatio() {
        return values.doseRatio;
    }

    /** {@return the angle between the edge of the jet and its axis} */
    public Quantity<Angle> halfAngle() {
        return Kind.ANGLE.of(Math.atan(values.spreadSlope));
    }

    /** {@return the relative standard uncertainty of the spread of the dose} */
    public double doseRelativeUncertainty() {
        return values.spread.doseRelative();
    }

    /** {@return the relative standard uncertainty of the half-angle} */
    public double angleRelativeUncertainty() {
        return values.spread.slopeRelative();
    }

    /** {@return the correlation of the logarithms of dose spread and half-angle, -1 to 1} */
    public double correlation() {
        return values.spread.correlation();
    }

    /** {@return the lag model that a kerf gets} */
    public LagModel lagModel() {
        return values.lagModel;
    }

    /**
     * Returns the kerf at a feed rate.
     *
     * @param cut conditions of the cut
     * @param feed feed rate, at most the one that just separates the workpiece
     * @return the kerf
     * @throws dev.waterjet.measure.DomainException if the jet does not separate the workpiece at that feed rate
     */
    public Kerf kerf(CutConditions cut, Quantity<Speed> feed) {
        return kerf(cut, cut.depth(feed));
    }

    /**
     * Returns the kerf for a known separation depth, as from a wedge cut.
     *
     * @param cut conditions of the cut
     * @param separationDepth depth that the jet just separates at the feed rate, at least the thickness
     * @return the kerf
     * @throws dev.waterjet.measure.DomainException if the jet does not separate the workpiece
     */
    public Kerf kerf(CutConditions cut, Estimate<Length> separationDepth) {
        return new Kerf(this, cut, separationDepth);
    }

    /**
     * Returns the distance from the tool path to the wall, on SI numbers, for loops and fits.
     *
     * @param cut conditions of the cut
     * @param separationDepthM depth that the jet just separates in m, above 0
     * @param depthM depth below the top side in m, 0 or more
     * @return half-width in m; 0 from the separation depth on
     */
    public double halfWidthSi(CutConditions cut, double separationDepthM, double depthM) {
        Objects.requireNonNull(cut, "cut");
        return shape(cut, depthM, separationDepthM).halfWidth(depthM);
    }

    KerfShape shape(CutConditions cut, double thicknessM, double separationDepthM) {
        return new KerfShape(
                thicknessM,
                separationDepthM,
                DoseExcess.of(cut),
                cut.jet().tubeExitBoreSi(),
                cut.jet().standOffSi(),
                values.doseRatio,
                values.spreadSlope);
    }

    double spreadSlope() {
        return values.spreadSlope;
    }

    KerfSpread spread() {
        return values.spread;
    }

    /**
     * Returns the feed rate at which the exit is as wide as the entry.
     *
     * @param cut conditions of the cut
     * @return the feed rate; empty where the jet does not diverge, so that no feed rate widens the exit enough
     */
    public Optional<Estimate<Speed>> feedOfZeroTaper(CutConditions cut) {
        Objects.requireNonNull(cut, "cut");
        KerfShape shape = shape(cut, cut.thicknessSi(), cut.thicknessSi());
        double depth = shape.zeroTaperDepth();
        double feed = depth < Double.MAX_VALUE ? cut.separationFeedSi(depth) : 0;
        if (!(feed > 0)) {
            return Optional.empty();
        }
        double depthUncertainty = values.spread.of(shape, at -> Math.log(at.zeroTaperDepth()));
        double slope = Math.log(feed / cut.separationFeedSi(depth * 1.001)) / Math.log(1.001);
        double relative = Math.hypot(cut.relativeUncertainty(), Math.min(50, depthUncertainty * slope));
        return Optional.of(Estimate.withinFactor(Kind.SPEED, feed, relative, cut.feedCautions(depth, feed)));
    }

    /**
     * Returns the minimum separation depth from which the taper of a wall is at most a limit. The taper falls as the
     * separation depth rises, so this is the depth of the maximum feed rate.
     *
     * @param cut conditions of the cut
     * @param taperPerSide maximum taper per side, between -90 and 90 degrees; below 0 for a kerf that widens downwards
     * @return the depth, at least the thickness; empty if no depth has so small a taper
     */
    public Optional<Estimate<Length>> separationDepthForTaper(CutConditions cut, Quantity<Angle> taperPerSide) {
        Objects.requireNonNull(cut, "cut");
        Objects.requireNonNull(taperPerSide, "taperPerSide");
        double right = Math.nextDown(Math.PI / 2);
        double limit = Require.between("taper per side", Kind.ANGLE.si(taperPerSide), -right, right, Units.DEGREE, "");
        return separationDepthFor(cut, KerfShape::taperPerSide, limit);
    }

    /**
     * Returns the minimum separation depth from which a wall deviates from straight and square by at most a limit, as in
     * {@link Kerf#wallDeviation}: the depth of the maximum feed rate.
     *
     * @param cut conditions of the cut
     * @param edge height left out at either side, from 0 to below half of the thickness
     * @param deviation maximum deviation, 0 or more
     * @return the depth, at least the thickness; empty if no depth up to ten thousand thicknesses has so small a deviation
     */
    public Optional<Estimate<Length>> separationDepthForDeviation(
            CutConditions cut, Quantity<Length> edge, Quantity<Length> deviation) {
        Objects.requireNonNull(cut, "cut");
        Objects.requireNonNull(deviation, "deviation");
        Objects.requireNonNull(edge, "edge");
        double edgeM = Kerf.edgeHeight(edge, cut.thicknessSi());
        double limit = Require.notNegative("deviation of a wall", Kind.LENGTH.si(deviation), Units.MILLIMETRE);
        return separationDepthFor(cut, shape -> shape.deviation(edgeM), limit);
    }

    /**
     * Returns the maximum separation depth up to which a wall deviates from straight and square by at most a limit: the depth
     * of the minimum feed rate. A slower cut widens downwards by more.
     *
     * @param cut conditions of the cut
     * @param edge height left out at either side, from 0 to below half of the thickness
     * @param deviation maximum deviation, 0 or more
     * @return the depth; empty if no depth from {@link #separationDepthForDeviation} up to ten thousand thicknesses has a
     *     larger deviation, or none has so small a one
     */
    public Optional<Estimate<Length>> maximumSeparationDepthForDeviation(
            CutConditions cut, Quantity<Length> edge, Quantity<Length> deviation) {
        Objects.requireNonNull(cut, "cut");
        Objects.requireNonNull(deviation, "deviation");
        Objects.requireNonNull(edge, "edge");
        double edgeM = Kerf.edgeHeight(edge, cut.thicknessSi());
        double limit = Kind.LENGTH.si(deviation);
        return separationDepthForDeviation(cut, edge, deviation)
                .flatMap(from ->
                        known(cut, shape -> DepthSearch.maximum(shape, at -> at.deviation(edgeM), limit, from.si())));
    }

    private Optional<Estimate<Length>> separationDepthFor(
            CutConditions cut, ToDoubleFunction<KerfShape> computed, double limit) {
        return known(cut, shape -> DepthSearch.minimum(shape, computed, limit));
    }

    /** A searched depth with its uncertainty, unless the search has come to its end. */
    private Optional<Estimate<Length>> known(CutConditions cut, ToDoubleFunction<KerfShape> search) {
        KerfShape shape = shape(cut, cut.thicknessSi(), cut.thicknessSi());
        double depth = search.applyAsDouble(shape);
        if (depth >= DepthSearch.end(shape)) {
            return Optional.empty();
        }
        double relative = values.spread.of(shape, at -> Math.log(search.applyAsDouble(at)));
        return Optional.of(Estimate.withinFactor(Kind.LENGTH, depth, relative, List.of()));
    }

    @Override
    public Evidence evidence() {
        return values.evidence;
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("kerf model")
                .put("dose_ratio", values.doseRatio)
                .put("dose_relative_uncertainty", values.spread.doseRelative())
                .put("half_angle", Kind.ANGLE, Math.atan(values.spreadSlope))
                .put("half_angle_relative_uncertainty", values.spread.slopeRelative())
                .put("correlation", values.spread.correlation())
                .put("width_scatter", Kind.LENGTH, values.spread.widthM())
                .put("lag_model", values.lagModel)
                .put("evidence", values.evidence)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof KerfModel that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return "kerf model, dose spread " + QuantityText.round(values.doseRatio, 4) + " bores, half-angle "
                + QuantityText.forPeople(Kind.ANGLE, Math.atan(values.spreadSlope));
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
