package dev.waterjet.calibrate;

import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import dev.waterjet.fit.Fit;
import dev.waterjet.fit.LeastSquares;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.surface.RoughnessModel;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;

/**
 * Roughness of a test cut, measured at depths down its cut surface. A list of them gives the numbers of a roughness model.
 *
 * <pre>{@code
 * RoughnessMeasurement surface = RoughnessMeasurement.of(jet, millimetres(25))
 *         .withRa(
 *                 QuantityArray.of(Kind.LENGTH, new double[] {1, 8, 16, 22}, Units.MILLIMETRE),
 *                 QuantityArray.of(Kind.LENGTH, new double[] {3, 4, 9, 16}, Units.MICROMETRE));
 * RoughnessModel own = RoughnessMeasurement.fit(List.of(surface)).model();
 * }</pre>
 *
 * @param jet the jet
 * @param separationDepth depth that the jet just separates at the feed rate of the cut, above 0
 * @param depths depth below the top side at which each roughness was measured, from 0 to the separation depth
 * @param ra Ra at each depth, above 0
 */
public record RoughnessMeasurement(
        AbrasiveJet jet, Quantity<Length> separationDepth, QuantityArray<Length> depths, QuantityArray<Length> ra)
        implements Described, Serializable {

    /** With fewer surfaces their spread is not known. */
    private static final int MIN_SURFACES = 3;

    /** Relative uncertainties of the model without a fit: factors of 1.5 and 2. */
    private static final double ASSUMED_TEXTURE = Math.log(1.5);

    private static final double ASSUMED_STRIATIONS = Math.log(2);

    private static final String TEXTURE = "Ra at the entry over the mean grain size";
    private static final String STRIATIONS = "growth of the striations over the bore";

    /**
     * Checks the components.
     *
     * @throws dev.waterjet.measure.DomainException if a length is out of its range, or there are more depths than roughness
     *     values or the other way round
     * @param jet the jet
     * @param separationDepth depth that the jet just separates at the feed rate of the cut, above 0
     * @param depths depth below the top side at which each roughness was measured, from 0 to the separation depth
     * @param ra Ra at each depth, above 0
     */
    public RoughnessMeasurement {
        Objects.requireNonNull(jet, "jet");
        double depthM = Require.positive("separation depth", Kind.LENGTH.si(separationDepth), Units.MILLIMETRE);
        separationDepth = Kind.LENGTH.of(depthM);
        Readings.requireDepths(depths, depthM, "the separation depth");
        Readings.requirePairs(depths, ra, "roughness values");
        ra.stream().forEach(value -> Require.positive("roughness Ra", value, Units.MICROMETRE));
    }

    /**
     * Returns a cut surface without readings.
     *
     * @param jet the jet that cut it
     * @param separationDepth depth that the jet just separates at the feed rate of the cut, above 0
     * @return the cut surface
     */
    public static RoughnessMeasurement of(AbrasiveJet jet, Quantity<Length> separationDepth) {
        Objects.requireNonNull(separationDepth, "separationDepth");
        return new RoughnessMeasurement(jet, separationDepth, Readings.NONE, Readings.NONE);
    }

    /**
     * Returns this cut surface with more readings.
     *
     * @param depths depths below the top side, each from 0 to the separation depth
     * @param ra Ra at each depth, above 0
     * @return the cut surface with those readings
     */
    public RoughnessMeasurement withRa(QuantityArray<Length> depths, QuantityArray<Length> ra) {
        return new RoughnessMeasurement(
                jet, separationDepth, Readings.append(this.depths, depths.toSi()), Readings.append(this.ra, ra.toSi()));
    }

    /**
     * Fits a roughness model to measured cut surfaces: texture at the entry and growth of the striations, by least squares on
     * the logarithm of Ra, because a roughness is known within a factor. The slow growth above the striations is kept.
     *
     * <p>The readings of a surface are not independent. From three surfaces on the uncertainties of the model come from leaving out each
     * surface in turn; with fewer they are no smaller than those assumed without a fit.
     *
     * @param surfaces cut surfaces with at least three readings in all, near the entry and in the striations
     * @return the model and its fit, on natural logarithms of Ra in m
     * @throws dev.waterjet.measure.NoSolutionException if the readings do not determine both numbers
     */
    public static FittedModel<RoughnessModel> fit(List<RoughnessMeasurement> surfaces) {
        Fit fit = least(surfaces);
        Evidence evidence = Evidence.of(
                EvidenceGrade.FITTED,
                Source.of("cut surfaces of the user")
                        .at(fit.observations() + " points of " + surfaces.size() + " surfaces"));
        double[] relative = relative(surfaces, fit);
        RoughnessModel model = RoughnessModel.standard()
                .withTextureRatio(fit.value(TEXTURE), relative[0], evidence)
                .withStriationGrowth(fit.value(STRIATIONS), relative[1], evidence);
        return new FittedModel<>(model, fit);
    }

    private static Fit least(List<RoughnessMeasurement> surfaces) {
        List<Reading> readings = new ArrayList<>();
        for (RoughnessMeasurement surface : surfaces) {
            for (int i = 0; i < surface.ra.size(); i++) {
                readings.add(new Reading(surface, i));
            }
        }
        RoughnessModel start = RoughnessModel.standard();
        return LeastSquares.of((i, numbers) -> readings.get(i).predicted(numbers))
                .withPositiveParameter(TEXTURE, start.textureRatio())
                .withPositiveParameter(STRIATIONS, start.striationGrowth())
                .fit(readings.stream().mapToDouble(Reading::logRa).toArray());
    }

    /** Relative uncertainties: those of the readings, and no less than what the surfaces show or, if they are few, what is assumed. */
    private static double[] relative(List<RoughnessMeasurement> surfaces, Fit fit) {
        double[] byReadings = {
            fit.standardError(TEXTURE) / fit.value(TEXTURE), fit.standardError(STRIATIONS) / fit.value(STRIATIONS)
        };
        double[] bySurfaces = {ASSUMED_TEXTURE, ASSUMED_STRIATIONS};
        if (surfaces.size() >= MIN_SURFACES) {
            bySurfaces = Lines.leaveOneOutErrors(surfaces.size(), left -> {
                List<RoughnessMeasurement> others = new ArrayList<>(surfaces);
                others.remove(left);
                Fit without = least(others);
                return new double[] {Math.log(without.value(TEXTURE)), Math.log(without.value(STRIATIONS))};
            });
        }
        return new double[] {Math.max(byReadings[0], bySurfaces[0]), Math.max(byReadings[1], bySurfaces[1])};
    }

    /** One reading of one surface. */
    private record Reading(RoughnessMeasurement surface, int index) {

        double logRa() {
            return Math.log(surface.ra.si(index));
        }

        double predicted(double[] numbers) {
            if (!(numbers[0] > 0 && numbers[0] < Double.MAX_VALUE && numbers[1] < Double.MAX_VALUE)) {
                return Double.NaN;
            }
            RoughnessModel start = RoughnessModel.standard();
            RoughnessModel tried = start.withTextureRatio(numbers[0], 0, start.evidence())
                    .withStriationGrowth(numbers[1], 0, start.evidence());
            return Math.log(tried.raSi(surface.jet, Kind.LENGTH.si(surface.separationDepth), surface.depths.si(index)));
        }
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("roughness measurement")
                .put("jet", jet)
                .put("separation_depth", Kind.LENGTH, Kind.LENGTH.si(separationDepth))
                .put("depths", depths)
                .put("ra", ra)
                .map();
    }

    @Override
    public String toString() {
        return ra.size() + " roughness readings, separation depth "
                + QuantityText.forPeople(Kind.LENGTH, separationDepth);
    }
}
