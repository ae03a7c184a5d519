package dev.waterjet.kerf;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.ToDoubleFunction;
import javax.measure.Quantity;
import javax.measure.quantity.Angle;
import javax.measure.quantity.Length;

/**
 * The gap that a jet leaves in a workpiece at one feed: its walls, its taper and its lag.
 *
 * <p>Widths are measured across the path, both walls together; a half-width reaches from the path to one wall. Taper is
 * above zero where the kerf narrows downwards; it is told per side, and the included angle of both sides is twice that.
 */
public final class Kerf implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private final KerfShape shape;
    private final KerfSpread spread;
    private final Lag lag;
    private final List<Caution> cautions;

    private Kerf(KerfShape shape, KerfSpread spread, Lag lag, List<Caution> cautions) {
        this.shape = shape;
        this.spread = spread;
        this.lag = lag;
        this.cautions = cautions;
    }

    static Kerf of(KerfShape shape, KerfSpread spread, Lag lag, List<Caution> cautions) {
        return new Kerf(shape, spread, lag, List.copyOf(cautions));
    }

    KerfShape shape() {
        return shape;
    }

    KerfSpread spread() {
        return spread;
    }

    Kerf withBoreGrownBy(double growthM) {
        return new Kerf(shape.withBore(shape.boreM() + growthM), spread, lag, cautions);
    }

    /**
     * Thickness of the workpiece.
     *
     * @return the thickness, in m
     */
    public Quantity<Length> thickness() {
        return Kind.LENGTH.of(shape.thicknessM());
    }

    /**
     * Depth that the jet just separates at the feed.
     *
     * @return the depth, no less than the thickness
     */
    public Estimate<Length> separationDepth() {
        return Estimate.withinFactor(Kind.LENGTH, shape.separationDepthM(), spread.depthRelative(), cautions);
    }

    /**
     * Quality index: separation depth over thickness.
     *
     * @return the index, 1 or more
     */
    public double index() {
        return shape.separationDepthM() / shape.thicknessM();
    }

    /**
     * Width where the jet enters.
     *
     * @return the width
     */
    public Estimate<Length> entryWidth() {
        return width(KerfShape::entryWidth);
    }

    /**
     * Width where the jet leaves.
     *
     * @return the width; zero where the jet just separates
     */
    public Estimate<Length> exitWidth() {
        return width(KerfShape::exitWidth);
    }

    /**
     * Greatest width over the depth.
     *
     * @return the width
     */
    public Estimate<Length> largestWidth() {
        return width(KerfShape::largestWidth);
    }

    /**
     * Smallest width over the depth.
     *
     * @return the width
     */
    public Estimate<Length> smallestWidth() {
        return width(KerfShape::smallestWidth);
    }

    /**
     * Width at a depth.
     *
     * @param depth depth below the entry face, from zero to the thickness
     * @return the width
     */
    public Estimate<Length> widthAt(Quantity<Length> depth) {
        double depthM = inside(Kind.LENGTH.si(depth));
        return width(at -> 2 * at.halfWidth(depthM));
    }

    private double inside(double depthM) {
        return Require.between(
                "depth", depthM, 0, shape.thicknessM(), Units.MILLIMETRE, "the thickness of the workpiece");
    }

    private Estimate<Length> width(ToDoubleFunction<KerfShape> computed) {
        return length(computed, spread.widthM());
    }

    private Estimate<Length> length(ToDoubleFunction<KerfShape> computed, double scatterM) {
        return Estimate.of(Kind.LENGTH, computed.applyAsDouble(shape), Math.hypot(spread.of(shape, computed), scatterM))
                .with(cautions);
    }

    /**
     * Depth at which the kerf is widest.
     *
     * @return the depth, from zero to the thickness
     */
    public Quantity<Length> depthOfLargestWidth() {
        return Kind.LENGTH.of(KerfKernel.widestDepth(shape, 0, shape.thicknessM()));
    }

    /**
     * Distance from path to wall at a depth, as a number: the wall profile y(z), for drawing and for loops.
     *
     * @param depthM depth in m, from zero to the thickness
     * @return half-width in m
     */
    public double halfWidthSi(double depthM) {
        return shape.halfWidth(inside(depthM));
    }

    /**
     * Slope of the wall at a depth: how much the half-width grows per depth.
     *
     * @param depthM depth in m, above zero and below the separation depth
     * @return dy/dz, below zero where the kerf narrows downwards
     */
    public double wallSlopeSi(double depthM) {
        Require.above("depth", inside(depthM), 0, Units.MILLIMETRE, "the wall starts there");
        Require.atMost(
                "depth",
                depthM,
                Math.nextDown(shape.separationDepthM()),
                Units.MILLIMETRE,
                "at the separation depth the walls meet");
        return shape.slope(depthM);
    }

    /**
     * Distances from path to wall at many depths.
     *
     * @param depths the depths, each from zero to the thickness
     * @return a half-width for each
     */
    public QuantityArray<Length> halfWidths(QuantityArray<Length> depths) {
        return depths.map(Kind.LENGTH, this::halfWidthSi);
    }

    /**
     * Taper of one wall: the angle whose tangent is {@code (entry width - exit width) / (2 thickness)}.
     *
     * @return the angle from the jet's axis; above zero where the kerf narrows downwards
     */
    public Estimate<Angle> taperPerSide() {
        return angle(1);
    }

    /**
     * Angle between both walls: twice the taper per side.
     *
     * @return the angle; above zero where the kerf narrows downwards
     */
    public Estimate<Angle> includedAngle() {
        return angle(2);
    }

    private Estimate<Angle> angle(int sides) {
        // an angle, so that no sheet is so thin that its taper could be off by more than a right angle
        double scatter = Math.atan(spread.widthM() / (Math.sqrt(2) * shape.thicknessM()));
        return Estimate.of(
                        Kind.ANGLE,
                        sides * shape.taperPerSide(),
                        sides * Math.hypot(spread.of(shape, KerfShape::taperPerSide), scatter))
                .with(cautions);
    }

    /**
     * How far a wall is from straight and square: between two lines square to the face that hold the wall between them,
     * away from both edges.
     *
     * @param edge height left out at either edge, from zero to below half of the thickness
     * @return greatest less smallest half-width
     */
    public Estimate<Length> wallDeviation(Quantity<Length> edge) {
        double edgeM = Require.between(
                "height left out at an edge",
                Kind.LENGTH.si(edge),
                0,
                Math.nextDown(shape.thicknessM() / 2),
                Units.MILLIMETRE,
                "nothing would be left between the edges");
        return length(at -> at.deviation(edgeM), spread.widthM() / Math.sqrt(2));
    }

    /**
     * What the cross-section looks like.
     *
     * @return the regime
     */
    public KerfRegime regime() {
        return KerfRegime.of(shape.entryWidth(), shape.exitWidth(), shape.largestWidth());
    }

    /**
     * Offset of the path that gives a part its size at the entry face: half of the entry width.
     *
     * @return the offset
     */
    public Estimate<Length> offset() {
        return offset(MeasuringPlane.ENTRY);
    }

    /**
     * Offset of the path that gives a part its size at a height.
     *
     * @param datum where the part is measured
     * @return the offset: half of the width there
     */
    public Estimate<Length> offset(MeasuringPlane datum) {
        return length(datum::halfWidth, spread.widthM() / 2);
    }

    /**
     * Smallest inner radius that this kerf can leave over the whole depth: half of the largest width.
     *
     * @return the radius
     */
    public Estimate<Length> minimumInnerRadius() {
        return offset(MeasuringPlane.WIDEST);
    }

    /**
     * Narrowest slot that this kerf can cut over the whole depth: the largest width.
     *
     * @return the width of the slot
     */
    public Estimate<Length> smallestSlot() {
        return largestWidth();
    }

    /**
     * The curved front of this cut.
     *
     * @return the lag
     */
    public Lag lag() {
        return lag;
    }

    /**
     * Cautions that apply to every number of this kerf.
     *
     * @return the cautions; empty if there are none
     */
    public List<Caution> cautions() {
        return cautions;
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("kerf")
                .put("thickness", Kind.LENGTH, shape.thicknessM())
                .put("separation_depth", Kind.LENGTH, shape.separationDepthM())
                .put("index", index())
                .put("regime", regime())
                .put("entry_width", plain(entryWidth()))
                .put("exit_width", plain(exitWidth()))
                .put("largest_width", plain(largestWidth()))
                .put("smallest_width", plain(smallestWidth()))
                .put(
                        "taper_per_side",
                        Estimate.of(
                                Kind.ANGLE, taperPerSide().si(), taperPerSide().standardUncertaintySi()))
                .put("compensation", plain(offset()))
                .put("lag", lag)
                .put("cautions", cautions)
                .map();
    }

    private static Estimate<Length> plain(Estimate<Length> estimate) {
        return Estimate.of(Kind.LENGTH, estimate.si(), estimate.standardUncertaintySi());
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Kerf that
                && shape.equals(that.shape)
                && spread.equals(that.spread)
                && lag.equals(that.lag)
                && cautions.equals(that.cautions);
    }

    @Override
    public int hashCode() {
        return Objects.hash(shape, spread, lag, cautions);
    }

    @Override
    public String toString() {
        return "kerf " + entryWidth().value() + " at the entry, " + exitWidth().value() + " at the exit, "
                + regime().label();
    }
}
