package dev.waterjet.surface;

import dev.waterjet.calibrate.RoughnessFit;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.HasEvidence;
import dev.waterjet.evidence.Source;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.kerf.Kerf;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import javax.measure.quantity.Length;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * Roughness down a face: {@code Ra(z) = k g (1 + a z/H) + b d e(z/H)}.
 *
 * <p>The grains set the texture at the entry, which hardly depends on the feed; down to about 0.52 of the separation depth H
 * it grows slowly, from there on grooves grow, so that the exit depends strongly on the feed. Symbols: g mean grain; d exit
 * bore of the focusing tube; H depth separated at the feed; e rises linearly from 0.52 on, with a smooth bend.
 *
 * <p>That roughness grows linearly with depth, hardly depends on the feed near the entry, and that the smooth zone ends at
 * 0.52 H is published; the coefficients are not. k = 0.02 within a factor 1.5, a = 1 within 2, b = 0.1 within 2 are
 * assumed; so are Rz = 6 Ra and Pa = 1.5 Ra. Pz = 11 Pa is published as 10 to 12. {@link RoughnessFit} fits k and b.
 *
 * <p>Ra and Rz are of the roughness profile, Pa and Pz of the primary profile, which still holds the waviness: they are
 * kept apart, and none stands for another.
 *
 * <p>Worked number: 80 mesh (180 um), tube 1 mm, halfway down to H: Ra = 3.6 * 1.5 + 1000 * 0.1 * 0.0157 = 7.0 um.
 */
public final class RoughnessModel implements HasEvidence, Serializable {

    private static final long serialVersionUID = 1L;

    private static final String UNDETERMINED = "the faces that were measured do not determine it";

    private static final RoughnessModel STANDARD = new RoughnessModel(
            new RoughnessNumbers(0.02, 1, 0.1, 6, 1.5, 11),
            new RoughnessNumbers(Math.log(1.5), Math.log(2), Math.log(2), 0.25, 0.3, 0.05),
            Evidence.of(
                            EvidenceGrade.DERIVED,
                            Source.of(
                                    "Linear growth: Tavodova 2013; smooth zone: Momber, Kovacevic, Proc. IMechE B 209 (1995);"
                                            + " entry and exit: JMMP 9 (2025) 80; grain: Hashish 1991"))
                    .withNote("The form follows published trends; its coefficients are assumed within wide factors."));

    private final RoughnessNumbers numbers;
    private final RoughnessNumbers relative;
    private final Evidence evidence;

    private RoughnessModel(RoughnessNumbers numbers, RoughnessNumbers relative, Evidence evidence) {
        this.numbers = numbers;
        this.relative = relative;
        this.evidence = Objects.requireNonNull(evidence, "evidence");
    }

    /**
     * The model with assumed numbers.
     *
     * @return the model to start from
     */
    public static RoughnessModel standard() {
        return STANDARD;
    }

    public RoughnessModel fitted(
            double textureRatio, double grainRelative, double groove, double grooveRelative, Evidence from) {
        Require.relativeUncertainty("entry texture", grainRelative, UNDETERMINED);
        Require.relativeUncertainty("growth of the grooves", grooveRelative, UNDETERMINED);
        return new RoughnessModel(
                new RoughnessNumbers(
                        textureRatio,
                        numbers.fineGrowth(),
                        groove,
                        numbers.rzOverRa(),
                        numbers.paOverRa(),
                        numbers.pzOverPa()),
                new RoughnessNumbers(
                        grainRelative,
                        relative.fineGrowth(),
                        grooveRelative,
                        relative.rzOverRa(),
                        relative.paOverRa(),
                        relative.pzOverPa()),
                from);
    }

    /**
     * This model with another ratio of Rz to Ra, as a shop finds it on its own faces.
     *
     * @param ratio Rz over Ra, above 1
     * @param relativeUncertainty its relative standard uncertainty, zero or more
     * @return the model with that ratio
     */
    public RoughnessModel withRzOverRa(double ratio, double relativeUncertainty) {
        Require.above("Rz over Ra", ratio, 1, Units.ONE, "a profile is higher than its mean deviation");
        return new RoughnessModel(
                new RoughnessNumbers(
                        numbers.textureRatio(),
                        numbers.fineGrowth(),
                        numbers.grooveGrowth(),
                        ratio,
                        numbers.paOverRa(),
                        numbers.pzOverPa()),
                new RoughnessNumbers(
                        relative.textureRatio(),
                        relative.fineGrowth(),
                        relative.grooveGrowth(),
                        relativeUncertainty,
                        relative.paOverRa(),
                        relative.pzOverPa()),
                evidence);
    }

    public RoughnessNumbers numbers() {
        return numbers;
    }

    RoughnessNumbers relative() {
        return relative;
    }

    /**
     * Ra at the entry over the mean grain: k.
     *
     * @return the ratio
     */
    public double textureRatio() {
        return numbers.textureRatio();
    }

    /**
     * Growth of Ra per separation depth in the grooved zone, over the exit bore: b.
     *
     * @return the ratio
     */
    public double striationGrowth() {
        return numbers.grooveGrowth();
    }

    /**
     * Roughness of the face of a kerf.
     *
     * @param jet the jet that cuts it
     * @param kerf the kerf
     * @return the roughness at any depth
     */
    public SurfaceRoughness roughness(AbrasiveJet jet, Kerf kerf) {
        return SurfaceRoughness.of(this, jet, kerf);
    }

    /**
     * Separation depth from which on Ra at a depth keeps below a limit: the least one, so the one of the fastest feed.
     *
     * @param jet the jet
     * @param piece the workpiece
     * @param depthM where on the face, in m below the entry, above zero and at most the thickness
     * @param raM greatest Ra, in m, above zero
     * @return the depth, no less than the thickness; nothing if even the texture at the entry is rougher
     */
    public Optional<Estimate<Length>> separationDepthForRaSi(
            AbrasiveJet jet, Workpiece piece, double depthM, double raM) {
        Require.between("depth", depthM, Double.MIN_VALUE, piece.thicknessSi(), Units.MILLIMETRE, "on the face");
        Require.positive("roughness Ra", raM, Units.MICROMETRE);
        double most = depthM / piece.thicknessSi();
        double ratio = depthRatio(numbers, jet, raM, most);
        if (!(ratio > 0)) {
            return Optional.empty();
        }
        double floor = most / 1e4;
        double spread = numbers.spread(relative, moved -> Math.max(floor, depthRatio(moved, jet, raM, most)));
        return Optional.of(Estimate.withinFactor(Kind.LENGTH, depthM / ratio, spread, List.of()));
    }

    double raOfRz(double rzM) {
        return rzM / numbers.rzOverRa();
    }

    /** Greatest z/H at which Ra keeps the limit; zero where the entry is rougher already. */
    private static double depthRatio(RoughnessNumbers numbers, AbrasiveJet jet, double raM, double most) {
        double grainM = jet.abrasive().mesh().meanGrainSizeSi();
        double boreM = jet.head().tube().exitBoreSi();
        if (RoughnessKernel.ra(0, grainM, boreM, numbers) >= raM) {
            return 0;
        }
        if (RoughnessKernel.ra(most, grainM, boreM, numbers) <= raM) {
            return most;
        }
        return new BrentSolver(1e-14, 1e-14)
                .solve(200, ratio -> RoughnessKernel.ra(ratio, grainM, boreM, numbers) / raM - 1, 0, most);
    }

    @Override
    public Evidence evidence() {
        return evidence;
    }

    @Override
    public String toString() {
        return "roughness model, Ra " + numbers.textureRatio() + " grains at the entry";
    }
}
