package dev.waterjet.simulate;

import dev.waterjet.evidence.Caution;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.kerf.CutFront;
import dev.waterjet.kerf.HeadTilt;
import dev.waterjet.kerf.KerfModel;
import dev.waterjet.kerf.KerfProfile;
import dev.waterjet.kerf.LagGeometry;
import dev.waterjet.kerf.LagModel;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Finding;
import dev.waterjet.part.Side;
import dev.waterjet.surface.RoughnessModel;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import javax.measure.Quantity;
import javax.measure.quantity.Angle;
import javax.measure.quantity.Length;

/**
 * Prediction of the cut that a tool path with its feed leaves on a part.
 *
 * <pre>{@code
 * CutSimulator simulator = CutSimulator.of(cut, KerfModel.standard(), LagModel.standard());
 * PredictedCut predicted = simulator.predict(FeedProfile.of(plan), contour, Side.LEFT);
 * double bottom = predicted.map().deviationSi(0, predicted.map().depths().size() - 1);
 * predicted.findings();
 * }</pre>
 *
 * <p>At each depth the cut front follows from the motion of the nozzle ({@link CutFront}). Its place beside the path depends
 * on a geometric model of corners ({@link LagGeometry}), which no measured corner confirms. The dose along the path of the
 * front, and the jet's own radius, decide what is cut ({@link KerfProfile}). Doses of separate passes are added, which
 * is assumed.
 *
 * <p>Evidence: the shape of the front and the Gaussian distribution of particles are published; how they are joined is derived;
 * that the front has no memory, that doses add and where the front is at a corner are assumed. Nothing here replaces a test
 * cut.
 *
 * <p>Cost: linear in the length of the path. Along a contour or path of more than 100 m points and nodes are farther apart in
 * proportion, away from corners, so that one of 500 m takes no more memory than one of 100 m. Immutable.
 */
public final class CutSimulator {

    private static final int DEPTHS = 9;
    private static final int MAX_DEPTHS = 1000;
    private static final double MAX_LENGTH_M = 500;
    private static final double MAX_SPREADS = 2e7;
    private static final double FIRST_DEPTH = 0.02;

    private static final Caution UNCONFIRMED = Caution.notice(Message.of(
            "prediction-unconfirmed",
            "no published measurement of a corner confirms the predicted cut; make a test cut before you rely on it"));

    private final CutConditions cut;
    private final KerfModel kerfModel;
    private final LagModel lagModel;
    private final LagGeometry geometry;
    private final Settings settings;

    /** Choices of a caller; what is not chosen is null or 0. */
    private record Settings(
            int depths,
            int points,
            @org.jspecify.annotations.Nullable Double toleranceM,
            double side,
            double lead,
            boolean isUncertain,
            RoughnessModel roughness) {

        Settings with(int newDepths, int newPoints, @org.jspecify.annotations.Nullable Double newToleranceM) {
            return new Settings(newDepths, newPoints, newToleranceM, side, lead, isUncertain, roughness);
        }
    }

    private CutSimulator(
            CutConditions cut, KerfModel kerfModel, LagModel lagModel, LagGeometry geometry, Settings settings) {
        this.cut = Objects.requireNonNull(cut, "cut");
        this.kerfModel = Objects.requireNonNull(kerfModel, "kerfModel");
        this.lagModel = Objects.requireNonNull(lagModel, "lagModel");
        this.geometry = Objects.requireNonNull(geometry, "geometry");
        this.settings = settings;
    }

    /**
     * Returns a simulator of cuts under some conditions, with an upright head and the tangent model of the lag at corners.
     *
     * @param cut conditions of the cut
     * @param kerfModel spread of the dose and half-angle of the jet
     * @param lagModel steady front
     * @return the simulator
     */
    public static CutSimulator of(CutConditions cut, KerfModel kerfModel, LagModel lagModel) {
        return new CutSimulator(
                cut,
                kerfModel,
                lagModel,
                LagGeometry.TANGENT,
                new Settings(DEPTHS, 0, null, 0, 0, false, RoughnessModel.standard()));
    }

    private CutSimulator with(Settings changed) {
        return new CutSimulator(cut, kerfModel, lagModel, geometry, changed);
    }

    /**
     * Returns this simulator with another geometric model of the lag where the path bends.
     *
     * @param other geometric model
     * @return the simulator with that model
     */
    public CutSimulator withGeometry(LagGeometry other) {
        Objects.requireNonNull(other, "other");
        return new CutSimulator(cut, kerfModel, lagModel, other, settings);
    }

    /**
     * Returns this simulator with another number of depths, from a fiftieth of the thickness to the bottom side, closer
     * towards the bottom.
     *
     * @param depths number of depths, 2 to 1000
     * @return the simulator with that number
     */
    public CutSimulator withDepths(int depths) {
        int checked = (int) Require.between("number of depths", depths, 2, MAX_DEPTHS, Units.ONE, "");
        return with(settings.with(checked, settings.points, settings.toleranceM));
    }

    /**
     * Returns this simulator with about so many points spread evenly along a contour, in place of a spacing of 0.2 mm that is
     * finer on arcs and near corners.
     *
     * @param points number of points, 1 or more
     * @return the simulator with that number
     */
    public CutSimulator withPoints(int points) {
        int checked = (int) Require.atLeast("number of points", points, 1, Units.ONE, "");
        return with(settings.with(settings.depths, checked, settings.toleranceM));
    }

    /**
     * Returns this simulator with one tolerance for all edges, in place of the perpendicularity range of ISO 9013 for the cut
     * quality of each edge.
     *
     * @param tolerance deviation allowed beside that of a straight cut, above 0
     * @return the simulator with that tolerance
     */
    public CutSimulator withTolerance(Quantity<Length> tolerance) {
        Objects.requireNonNull(tolerance, "tolerance");
        double checked = Require.positive("tolerance", Kind.LENGTH.si(tolerance), Units.MILLIMETRE);
        return with(settings.with(settings.depths, settings.points, checked));
    }

    /**
     * Returns this simulator with a constant tilt, for profiles that have none of their own. It turns with the path, at a
     * corner in no time. How a leaning jet changes the front is not known: lag and depth are those of an upright jet.
     *
     * @param side side tilt of the jet towards the part, -45 to 45 degrees
     * @param lead lead of the jet along the path, -45 to 45 degrees
     * @return the simulator with that tilt
     */
    public CutSimulator withTilt(Quantity<Angle> side, Quantity<Angle> lead) {
        Objects.requireNonNull(lead, "lead");
        Objects.requireNonNull(side, "side");
        return with(new Settings(
                settings.depths,
                settings.points,
                settings.toleranceM,
                tangent("side tilt", side),
                tangent("lead angle", lead),
                settings.isUncertain,
                settings.roughness));
    }

    /**
     * Returns this simulator with the uncertainty of the deviation at every point, and not only at the worst places. A prediction
     * takes nine times as long.
     *
     * @return the simulator with those uncertainties
     */
    public CutSimulator withUncertainty() {
        return with(new Settings(
                settings.depths,
                settings.points,
                settings.toleranceM,
                settings.side,
                settings.lead,
                true,
                settings.roughness));
    }

    /**
     * Returns this simulator with another model of the roughness.
     *
     * @param model roughness model
     * @return the simulator with that model
     */
    public CutSimulator withRoughness(RoughnessModel model) {
        Objects.requireNonNull(model, "model");
        return with(new Settings(
                settings.depths,
                settings.points,
                settings.toleranceM,
                settings.side,
                settings.lead,
                settings.isUncertain,
                model));
    }

    private static double tangent(String name, Quantity<Angle> angle) {
        double limit = Math.PI / 4;
        return Math.tan(Require.between(name, Kind.ANGLE.si(angle), -limit, limit, Units.DEGREE, "a head tilts less"));
    }

    /** {@return the conditions of the cut} */
    public CutConditions conditions() {
        return cut;
    }

    /** {@return the geometric model of the lag where the path bends} */
    public LagGeometry geometry() {
        return geometry;
    }

    /**
     * Predicts the cut along one contour of a part.
     *
     * @param profile tool path and feed along it
     * @param contour contour of the part
     * @param part side of the contour on which the part lies
     * @return the prediction
     */
    public PredictedCut predict(FeedProfile profile, Contour contour, Side part) {
        Objects.requireNonNull(contour, "contour");
        Objects.requireNonNull(part, "part");
        Objects.requireNonNull(profile, "profile");
        KerfProfile kerf = profile();
        double h = cut.thicknessSi();
        double[] depths = new double[settings.depths];
        for (int i = 0; i < depths.length; i++) {
            double share = (double) i / (depths.length - 1);
            depths[i] = h * (FIRST_DEPTH + (1 - FIRST_DEPTH) * share * (1.5 - 0.5 * share));
        }
        depths[depths.length - 1] = h;
        Require.atMost(
                "length of the tool path", profile.path().lengthSi(), MAX_LENGTH_M, Units.METRE, "predict it in parts");
        Require.atMost(
                "length of the tool path over the spread of the dose",
                profile.path().lengthSi() / kerf.spreadSi(),
                MAX_SPREADS,
                Units.ONE,
                "predict it in parts");
        Require.atMost("length of the contour", contour.lengthSi(), MAX_LENGTH_M, Units.METRE, "predict it in parts");
        HeadPath head = HeadPath.of(profile, settings.side * part.sign(), settings.lead);
        ContourPoints.Spacing spacing = settings.points > 0
                ? ContourPoints.Spacing.even(contour.lengthSi() / settings.points)
                : ContourPoints.Spacing.fine(contour.lengthSi(), kerf.spreadSi());
        CutPrediction prediction = new CutPrediction(this, kerf, head, contour, part);
        DeviationMap map = prediction.map(spacing, depths);
        List<CutPlace> places = prediction.places(map);
        List<Finding> findings = new ArrayList<>(CutFindings.of(map, places));
        findings.addAll(SurfaceFindings.of(map, Kind.LENGTH.of(h)));
        List<Caution> cautions = new ArrayList<>(cautions(kerf, head));
        if (settings.isUncertain) {
            map.separationMargin().ifPresent(cautions::add);
        }
        return new PredictedCut(map, places, findings, cautions);
    }

    boolean hasUncertainty() {
        return settings.isUncertain;
    }

    MapSurface surface() {
        return new MapSurface(cut, settings.roughness);
    }

    private KerfProfile profile() {
        return KerfProfile.of(kerfModel, CutFront.of(lagModel, cut), cut.jet());
    }

    /** Profiles with each uncertain number one standard uncertainty up and down, in pairs. */
    List<KerfProfile> variations() {
        double lag = Math.exp(lagModel.relativeUncertainty());
        double feed = Math.exp(cut.relativeUncertainty());
        CutFront front = CutFront.of(lagModel, cut);
        return List.of(
                KerfProfile.of(kerfModel, CutFront.of(scaled(lag), cut), cut.jet()),
                KerfProfile.of(kerfModel, CutFront.of(scaled(1 / lag), cut), cut.jet()),
                KerfProfile.of(kerfModel, CutFront.ofFeeds(lagModel, cut, feed), cut.jet()),
                KerfProfile.of(kerfModel, CutFront.ofFeeds(lagModel, cut, 1 / feed), cut.jet()),
                KerfProfile.ofDoseSpread(kerfModel, front, cut.jet(), 1),
                KerfProfile.ofDoseSpread(kerfModel, front, cut.jet(), -1),
                KerfProfile.ofHalfAngle(kerfModel, front, cut.jet(), 1),
                KerfProfile.ofHalfAngle(kerfModel, front, cut.jet(), -1));
    }

    private LagModel scaled(double factor) {
        return LagModel.of(lagModel.coefficient() * factor, 0, lagModel.evidence());
    }

    /** Correlation of the logarithms of dose spread and half-angle. */
    double correlation() {
        return kerfModel.correlation();
    }

    double toleranceM(Contour contour, int edge) {
        return settings.toleranceM != null
                ? settings.toleranceM
                : contour.requirement(edge).lagToleranceSi(cut.thicknessSi());
    }

    private List<Caution> cautions(KerfProfile kerf, HeadPath head) {
        Set<Caution> all = new LinkedHashSet<>(cut.cautions());
        double fastest = 0;
        for (int i = 0; i < head.count; i++) {
            fastest = Math.max(fastest, head.feed[i]);
        }
        double separating = cut.feedSi(1);
        all.addAll(cut.feedCautions(cut.separationDepthSi(fastest), fastest));
        all.addAll(kerf.front().cautions(fastest));
        all.addAll(kerfModel
                .kerf(cut, Kind.SPEED.of(Math.min(fastest, separating)))
                .cautions());
        all.add(UNCONFIRMED);
        all.addAll(HeadTilt.ofSi(head.largestTilt(), 0).cautions());
        return List.copyOf(all);
    }

    @Override
    public String toString() {
        return "predicted cut of " + cut.workpiece() + ", lag " + geometry.label() + ", side tilt "
                + QuantityText.forPeople(Kind.ANGLE, Math.atan(settings.side));
    }
}
