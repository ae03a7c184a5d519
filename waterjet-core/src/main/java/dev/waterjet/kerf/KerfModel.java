package dev.waterjet.kerf;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.HasEvidence;
import dev.waterjet.evidence.Source;
import dev.waterjet.feed.FeedModel;
import dev.waterjet.fit.Fit;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import javax.measure.Quantity;
import javax.measure.quantity.Angle;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;

/**
 * Walls of a kerf from the dose that a pass leaves across it.
 *
 * <p>Grains cross the jet with a Gaussian profile, so at a distance y from the path the jet can separate a depth of {@code
 * H exp(-y^2 / (2 s^2))}, with H the depth that it separates at the running feed. At depth z the dose therefore reaches
 * {@code y_D = s sqrt(2 ln(H/z))}; and no grain is farther out than the spreading jet, {@code y_J = d/2 + (S + z) tan
 * alpha}. The wall stands at {@code y = (y_D^-8 + y_J^-8)^(-1/8)}: a smooth minimum. One formula gives the V of a fast cut,
 * parallel walls, the reverse taper of a slow one and the barrel of thick plate.
 *
 * <p>Symbols: s spread of the dose, told as a ratio to d; d exit bore of the focusing tube, worn as it is; S stand-off;
 * alpha half-angle of the jet; h thickness; all lengths in m.
 *
 * <p>The form is derived, and its numbers are assumed: s/d = 0.27 within 20 per cent, alpha = 1 degree within 50 per cent,
 * a width scatters by 0.03 mm. No published coefficients are known; a shop fits its own with {@link
 * KerfFit}. A worn tube
 * widens jet and dose here; what it does to the separation depth is the feed model's to say.
 *
 * <p>Worked number: tube 1 mm, stand-off 2 mm, 10 mm thick, index 3: entry 1.070 mm, exit 0.799 mm, taper 0.77 degrees per
 * side.
 */
public final class KerfModel implements HasEvidence, Serializable {

    private static final long serialVersionUID = 1L;

    private static final double ASSUMED_DOSE_RATIO = 0.27;
    private static final double ASSUMED_DOSE_UNCERTAINTY = 0.2;
    private static final double ASSUMED_HALF_ANGLE_RAD = Math.toRadians(1);
    private static final double ASSUMED_ANGLE_UNCERTAINTY = 0.5;
    private static final double ASSUMED_WIDTH_SCATTER_M = 0.03e-3;

    private static final KerfModel STANDARD = new KerfModel(
            ASSUMED_DOSE_RATIO,
            Math.tan(ASSUMED_HALF_ANGLE_RAD),
            new KerfSpread(0, ASSUMED_DOSE_UNCERTAINTY, ASSUMED_ANGLE_UNCERTAINTY, 0, ASSUMED_WIDTH_SCATTER_M),
            LagModel.standard(),
            Evidence.of(
                            EvidenceGrade.DERIVED,
                            Source.of("Gaussian flux of grains across the jet: Balz et al., Exp. Fluids 2013"))
                    .withNote(
                            "The form is derived from the profile of the jet; spread 0.27 bores within 20 per cent, half-angle"
                                    + " 1 degree within 50 per cent and a scatter of 0.03 mm are assumed: fit them to measured"
                                    + " widths."));

    private final double doseRatio;
    private final double spreadSlope;
    /** Without the uncertainty of a separation depth, which comes with each cut. */
    private final KerfSpread spread;

    private final LagModel lagModel;
    private final Evidence evidence;

    private KerfModel(double doseRatio, double spreadSlope, KerfSpread spread, LagModel lagModel, Evidence evidence) {
        this.doseRatio = Require.positive("spread of the dose over the bore", doseRatio, Units.ONE);
        this.spreadSlope = Require.notNegative("slope of the jet's edge", spreadSlope, Units.ONE);
        this.spread = spread;
        this.lagModel = Objects.requireNonNull(lagModel, "lagModel");
        this.evidence = Objects.requireNonNull(evidence, "evidence");
    }

    /**
     * The model with assumed numbers.
     *
     * @return the model to start from
     */
    public static KerfModel standard() {
        return STANDARD;
    }

    /**
     * This model with another spread of the dose.
     *
     * @param ratio standard deviation of the dose across the kerf over the exit bore, above zero
     * @param relativeUncertainty its relative standard uncertainty, zero or more
     * @param evidence what speaks for the model then
     * @return the model with that spread
     */
    public KerfModel withDoseSpread(double ratio, double relativeUncertainty, Evidence evidence) {
        Require.notNegative("relative uncertainty of the dose's spread", relativeUncertainty, Units.ONE);
        KerfSpread changed = new KerfSpread(0, relativeUncertainty, spread.slopeRelative(), 0, spread.widthM());
        return new KerfModel(ratio, spreadSlope, changed, lagModel, evidence);
    }

    /**
     * This model with another half-angle of the jet.
     *
     * @param halfAngle angle between the jet's edge and its axis, from zero to 45 degrees
     * @param relativeUncertainty its relative standard uncertainty, zero or more
     * @param evidence what speaks for the model then
     * @return the model with that angle
     */
    public KerfModel withHalfAngle(Quantity<Angle> halfAngle, double relativeUncertainty, Evidence evidence) {
        double angle = Require.between(
                "half-angle of the jet",
                Kind.ANGLE.si(halfAngle),
                0,
                Math.PI / 4,
                Units.DEGREE,
                "no jet that cuts opens wider");
        Require.notNegative("relative uncertainty of the jet's half-angle", relativeUncertainty, Units.ONE);
        KerfSpread changed = new KerfSpread(0, spread.doseRelative(), relativeUncertainty, 0, spread.widthM());
        return new KerfModel(doseRatio, Math.tan(angle), changed, lagModel, evidence);
    }

    /**
     * This model with another scatter of single widths.
     *
     * @param deviation standard deviation of a measured width about the model, zero or more
     * @return the model with that scatter
     */
    public KerfModel withWidthScatter(Quantity<Length> deviation) {
        double scatterM = Require.notNegative("scatter of a width", Kind.LENGTH.si(deviation), Units.MILLIMETRE);
        KerfSpread changed =
                new KerfSpread(0, spread.doseRelative(), spread.slopeRelative(), spread.correlation(), scatterM);
        return new KerfModel(doseRatio, spreadSlope, changed, lagModel, evidence);
    }

    /**
     * This model with another lag.
     *
     * @param lagModel the lag
     * @return the model with that lag
     */
    public KerfModel withLag(LagModel lagModel) {
        return new KerfModel(doseRatio, spreadSlope, spread, lagModel, evidence);
    }

    public KerfModel fitted(Fit fit, String dose, String slope, Evidence from) {
        KerfSpread found = new KerfSpread(
                0,
                fit.standardError(dose) / fit.value(dose),
                fit.standardError(slope) / fit.value(slope),
                fit.correlation(dose, slope),
                fit.residualDeviation());
        return new KerfModel(fit.value(dose), fit.value(slope), found, lagModel, from);
    }

    public double spreadSlope() {
        return spreadSlope;
    }

    /**
     * Standard deviation of the dose across the kerf, over the exit bore.
     *
     * @return the ratio, above zero
     */
    public double doseRatio() {
        return doseRatio;
    }

    /**
     * Angle between the jet's edge and its axis.
     *
     * @return the angle, zero or more
     */
    public Quantity<Angle> halfAngle() {
        return Kind.ANGLE.of(Math.atan(spreadSlope));
    }

    /**
     * The lag that comes with a kerf.
     *
     * @return the model
     */
    public LagModel lagModel() {
        return lagModel;
    }

    /**
     * The kerf at a feed.
     *
     * @param jet the jet
     * @param piece the workpiece
     * @param feeds what is known of feed and depth
     * @param feed the feed, no faster than the one that just separates the workpiece
     * @return the kerf
     * @throws dev.waterjet.measure.DomainException if the jet does not separate the workpiece at that feed
     */
    public Kerf kerf(AbrasiveJet jet, Workpiece piece, FeedModel feeds, Quantity<Speed> feed) {
        return kerf(jet, piece, Separation.of(jet, piece, feeds, feed));
    }

    /**
     * The kerf where the separation depth is known, as from a wedge cut.
     *
     * @param jet the jet
     * @param piece the workpiece
     * @param separationDepth depth that the jet just separates at the running feed, no less than the thickness
     * @return the kerf
     * @throws dev.waterjet.measure.DomainException if the jet does not separate the workpiece
     */
    public Kerf kerf(AbrasiveJet jet, Workpiece piece, Estimate<Length> separationDepth) {
        return kerf(jet, piece, Separation.of(piece.thicknessSi(), separationDepth));
    }

    private Kerf kerf(AbrasiveJet jet, Workpiece piece, Separation separation) {
        List<Caution> cautions = new ArrayList<>(separation.cautions());
        if (evidence.grade() != EvidenceGrade.FITTED) {
            cautions.add(Caution.notice(
                    "kerf-not-fitted",
                    "widths rest on assumed numbers; fit the kerf model to widths of your own cuts"));
        }
        return Kerf.of(
                shape(jet, piece, separation.depthM()),
                spread.withDepth(separation.relativeUncertainty()),
                Lag.of(lagModel, piece.thicknessSi(), separation),
                cautions);
    }

    public KerfShape shape(AbrasiveJet jet, Workpiece piece, double separationDepthM) {
        return new KerfShape(
                piece.thicknessSi(),
                separationDepthM,
                jet.head().tube().exitBoreSi(),
                jet.head().standOffSi(),
                doseRatio,
                spreadSlope);
    }

    /**
     * Feed at which the exit is as wide as the entry.
     *
     * @param jet the jet
     * @param piece the workpiece
     * @param feeds what is known of feed and depth
     * @return the feed; nothing where the jet does not spread, so that no feed widens the exit enough
     */
    public Optional<Estimate<Speed>> feedOfZeroTaper(AbrasiveJet jet, Workpiece piece, FeedModel feeds) {
        KerfShape shape = shape(jet, piece, piece.thicknessSi());
        double depth = shape.zeroTaperDepth();
        double feed = depth < Double.MAX_VALUE ? feeds.separationFeedSi(jet, piece.material(), depth) : 0;
        if (!(feed > 0)) {
            return Optional.empty();
        }
        double depthUncertainty = spread.of(shape, at -> Math.log(at.zeroTaperDepth()));
        double slope = Math.log(feed / feeds.separationFeedSi(jet, piece.material(), depth * 1.001)) / Math.log(1.001);
        double relative =
                Math.hypot(feeds.relativeUncertainty(piece.material()), Math.min(50, depthUncertainty * slope));
        return Optional.of(
                Estimate.withinFactor(Kind.SPEED, feed, relative, feeds.cautions(jet, piece.material(), depth, feed)));
    }

    /**
     * Separation depth from which on a wall tapers no more than a limit: the least one, so the one of the fastest feed.
     *
     * @param jet the jet
     * @param piece the workpiece
     * @param taperPerSide greatest taper per side, from zero to 45 degrees
     * @return the depth, no less than the thickness; nothing if the jet does not spread and the limit is out of reach
     */
    public Optional<Estimate<Length>> separationDepthForTaper(
            AbrasiveJet jet, Workpiece piece, Quantity<Angle> taperPerSide) {
        double limit = Require.between(
                "taper per side", Kind.ANGLE.si(taperPerSide), 0, Math.nextDown(Math.PI / 2), Units.DEGREE, "");
        return separationDepthFor(jet, piece, KerfShape::taperPerSide, limit);
    }

    /**
     * Separation depth from which on a wall deviates from straight and square no more than a limit, as {@link
     * Kerf#wallDeviation} tells it: the least one, so the one of the fastest feed.
     *
     * @param jet the jet
     * @param piece the workpiece
     * @param edgeM height left out at each edge, in m, from zero to below half of the thickness
     * @param deviationM greatest deviation, in m, zero or more
     * @return the depth, no less than the thickness; nothing if no depth within ten thousand thicknesses will do
     */
    public Optional<Estimate<Length>> separationDepthForDeviationSi(
            AbrasiveJet jet, Workpiece piece, double edgeM, double deviationM) {
        Require.between(
                "height left out at an edge",
                edgeM,
                0,
                Math.nextDown(piece.thicknessSi() / 2),
                Units.MILLIMETRE,
                "nothing would be left between the edges");
        Require.notNegative("deviation of a wall", deviationM, Units.MILLIMETRE);
        return separationDepthFor(jet, piece, shape -> shape.deviation(edgeM), deviationM);
    }

    private Optional<Estimate<Length>> separationDepthFor(
            AbrasiveJet jet, Workpiece piece, ToDoubleFunction<KerfShape> computed, double limit) {
        KerfShape shape = shape(jet, piece, piece.thicknessSi());
        double depth = DepthSearch.least(shape, computed, limit);
        if (depth >= DepthSearch.farthest(shape)) {
            return Optional.empty();
        }
        double relative = spread.of(shape, at -> Math.log(DepthSearch.least(at, computed, limit)));
        return Optional.of(Estimate.withinFactor(Kind.LENGTH, depth, relative, List.of()));
    }

    @Override
    public Evidence evidence() {
        return evidence;
    }

    @Override
    public String toString() {
        return "kerf model, dose spread " + doseRatio + " bores, half-angle " + Math.toDegrees(Math.atan(spreadSlope))
                + " deg";
    }
}
