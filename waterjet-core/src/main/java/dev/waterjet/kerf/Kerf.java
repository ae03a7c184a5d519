package dev.waterjet.kerf;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import javax.measure.Quantity;
import javax.measure.quantity.Angle;
import javax.measure.quantity.Length;

/**
 * Kerf of one cut: walls, taper and lag, computed on request.
 *
 * <p>Widths are measured across the tool path, from wall to wall; a half-width reaches from the path to one wall. Taper is
 * given per side, above 0 where the kerf narrows downwards; the included angle of both sides is twice that.
 *
 * @param model kerf model
 * @param cut conditions of the cut
 * @param separationDepth depth that the jet just separates at the feed rate, at least the thickness
 */
public record Kerf(KerfModel model, CutConditions cut, Estimate<Length> separationDepth)
        implements Described, Serializable {

    /**
     * Checks the components.
     *
     * @throws dev.waterjet.measure.DomainException if the jet does not separate the workpiece, or the separation depth is
     *     uncertain by more than a factor of 20
     * @throws dev.waterjet.measure.NoSolutionException if the feed model has no answer for the workpiece
     * @param model kerf model
     * @param cut conditions of the cut
     * @param separationDepth depth that the jet just separates at the feed rate, at least the thickness
     */
    public Kerf {
        Objects.requireNonNull(model, "model");
        Objects.requireNonNull(cut, "cut");
        separationDepth = Separation.through(cut.thicknessSi(), separationDepth);
        model.spread().withDepth(separationDepth.relativeUncertainty());
        requireAnswer(cut);
    }

    /** The walls follow from the feed model, which has no answer for every material. */
    private static void requireAnswer(CutConditions cut) {
        cut.separationFeedSi(cut.thicknessSi());
    }

    KerfShape shape() {
        return model.shape(cut, cut.thicknessSi(), separationDepth.si());
    }

    /** {@return the jet} */
    public AbrasiveJet jet() {
        return cut.jet();
    }

    /** {@return the workpiece} */
    public Workpiece workpiece() {
        return cut.workpiece();
    }

    KerfSpread spread() {
        return model.spread().withDepth(separationDepth.relativeUncertainty());
    }

    /** {@return the thickness of the workpiece} */
    public Quantity<Length> thickness() {
        return workpiece().thickness();
    }

    /** {@return the quality index: separation depth over thickness, at least 1} */
    public double index() {
        return separationDepth.si() / workpiece().thicknessSi();
    }

    /** {@return the width at the entry} */
    public Estimate<Length> entryWidth() {
        return width(KerfShape::entryWidth);
    }

    /** {@return the width at the exit; 0 where the jet just separates} */
    public Estimate<Length> exitWidth() {
        return width(KerfShape::exitWidth);
    }

    /** {@return the maximum width over the depth} */
    public Estimate<Length> maximumWidth() {
        return width(KerfShape::maximumWidth);
    }

    /** {@return the minimum width over the depth} */
    public Estimate<Length> minimumWidth() {
        return width(KerfShape::minimumWidth);
    }

    /**
     * Returns the width at a depth.
     *
     * @param depth depth below the top side, from 0 to the thickness
     * @return the width
     */
    public Estimate<Length> widthAt(Quantity<Length> depth) {
        Objects.requireNonNull(depth, "depth");
        double depthM = inside(Kind.LENGTH.si(depth));
        return width(at -> 2 * at.halfWidth(depthM));
    }

    private double inside(double depthM) {
        return Require.between(
                "depth", depthM, 0, workpiece().thicknessSi(), Units.MILLIMETRE, "the thickness of the workpiece");
    }

    private Estimate<Length> width(ToDoubleFunction<KerfShape> computed) {
        return length(computed, 1);
    }

    /** Length, with its share of the scatter of a width. */
    private Estimate<Length> length(ToDoubleFunction<KerfShape> computed, double scatterShare) {
        KerfShape shape = shape();
        KerfSpread spread = spread();
        double uncertainty = Math.hypot(spread.of(shape, computed), spread.widthM(shape.boreM()) * scatterShare);
        return Estimate.of(Kind.LENGTH, computed.applyAsDouble(shape), uncertainty)
                .with(cautions());
    }

    /** {@return the depth at which the kerf is widest, from 0 to the thickness} */
    public Quantity<Length> depthOfMaximumWidth() {
        return Kind.LENGTH.of(KerfKernel.widestDepth(shape(), 0, workpiece().thicknessSi()));
    }

    /**
     * Returns the distance from the tool path to the wall at a depth, on SI numbers: the wall profile, for drawing and loops.
     *
     * @param depthM depth in m, from 0 to the thickness
     * @return half-width in m
     */
    public double halfWidthSi(double depthM) {
        return model.halfWidthSi(cut, separationDepth.si(), inside(depthM));
    }

    /**
     * Returns the slope of the wall at a depth, on SI numbers: change of the half-width over depth.
     *
     * @param depthM depth in m, above 0 and below the separation depth
     * @return dy/dz, below 0 where the kerf narrows downwards
     */
    public double wallSlopeSi(double depthM) {
        Require.above("depth", inside(depthM), 0, Units.MILLIMETRE, "the wall starts there");
        Require.atMost(
                "depth",
                depthM,
                Math.nextDown(separationDepth.si()),
                Units.MILLIMETRE,
                "at the separation depth the walls meet");
        return shape().slope(depthM);
    }

    /**
     * Returns the taper of one wall: the angle whose tangent is {@code (entry width - exit width) / (2 thickness)}.
     *
     * @return angle from the axis of the jet; above 0 where the kerf narrows downwards
     */
    public Estimate<Angle> taperPerSide() {
        return angle(1);
    }

    /** {@return the included angle of both walls: twice the taper per side} */
    public Estimate<Angle> includedAngle() {
        return angle(2);
    }

    private Estimate<Angle> angle(int sides) {
        KerfShape shape = shape();
        KerfSpread spread = spread();
        // an angle, so that no sheet is so thin that its taper could be off by more than a right angle
        double scatter = Math.atan(spread.widthM(shape.boreM()) / (Math.sqrt(2) * shape.thicknessM()));
        double uncertainty = Math.hypot(spread.of(shape, KerfShape::taperPerSide), scatter);
        return Estimate.of(Kind.ANGLE, sides * shape.taperPerSide(), sides * uncertainty)
                .with(cautions());
    }

    /**
     * Returns the deviation of a wall from straight and square: the distance of two lines square to the top side that hold
     * the wall between them, away from both sides.
     *
     * @param edge height left out at either side, from 0 to below half of the thickness
     * @return maximum less minimum half-width
     */
    public Estimate<Length> wallDeviation(Quantity<Length> edge) {
        Objects.requireNonNull(edge, "edge");
        double edgeM = edgeHeight(edge, workpiece().thicknessSi());
        return length(at -> at.deviation(edgeM), 1 / Math.sqrt(2));
    }

    static double edgeHeight(Quantity<Length> edge, double thicknessM) {
        return Require.between(
                "height left out at an edge",
                Kind.LENGTH.si(edge),
                0,
                Math.nextDown(thicknessM / 2),
                Units.MILLIMETRE,
                "half of the thickness");
    }

    /** {@return the form of the cross-section} */
    public KerfRegime regime() {
        KerfShape shape = shape();
        return KerfRegime.of(shape.entryWidth(), shape.exitWidth(), shape.maximumWidth());
    }

    /** {@return the kerf offset that gives a part its size at the top side: half of the entry width} */
    public Estimate<Length> offset() {
        return offset(MeasuringPlane.ENTRY);
    }

    /**
     * Returns the kerf offset that gives a part its size at a height.
     *
     * @param plane height at which the part is measured
     * @return the offset: half of the width there
     */
    public Estimate<Length> offset(MeasuringPlane plane) {
        Objects.requireNonNull(plane, "plane");
        return length(plane::halfWidth, 0.5);
    }

    /** {@return the minimum inner radius over the whole depth: half of the maximum width} */
    public Estimate<Length> minimumInnerRadius() {
        return offset(MeasuringPlane.WIDEST);
    }

    /** {@return the minimum width of a slot over the whole depth: the maximum width of the kerf} */
    public Estimate<Length> minimumSlotWidth() {
        return maximumWidth();
    }

    /** {@return the lag of this cut} */
    public Lag lag() {
        return new Lag(model.lagModel(), workpiece().thickness(), separationDepth);
    }

    /** {@return the cautions that apply to every number of this kerf} */
    public List<Caution> cautions() {
        Set<Caution> all = new LinkedHashSet<>(separationDepth.cautions());
        all.addAll(KerfRange.cautions(model.evidence(), shape()));
        return List.copyOf(all);
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("kerf")
                .put("model", model)
                .put("jet", jet())
                .put("workpiece", workpiece())
                .put("separation_depth", separationDepth)
                .put("index", index())
                .put("regime", regime())
                .put("entry_width", plain(entryWidth()))
                .put("exit_width", plain(exitWidth()))
                .put("maximum_width", plain(maximumWidth()))
                .put("minimum_width", plain(minimumWidth()))
                .put("taper_per_side", plain(taperPerSide()))
                .put("offset", plain(offset()))
                .put("exit_lag", lag().atExit())
                .put("cautions", cautions())
                .map();
    }

    /** The cautions are given once, beside the numbers. */
    private static <Q extends Quantity<Q>> Estimate<Q> plain(Estimate<Q> estimate) {
        return Estimate.of(estimate.kind(), estimate.si(), estimate.standardUncertaintySi());
    }

    @Override
    public String toString() {
        KerfShape shape = shape();
        return "kerf " + QuantityText.forPeople(Kind.LENGTH, shape.entryWidth()) + " at entry, "
                + QuantityText.forPeople(Kind.LENGTH, shape.exitWidth()) + " at exit, "
                + regime().label();
    }
}
