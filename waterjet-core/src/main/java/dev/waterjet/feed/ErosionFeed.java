package dev.waterjet.feed;

import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.JetSettings;
import dev.waterjet.material.Material;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.NoSolutionException;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.Objects;
import java.util.OptionalDouble;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Speed;

/**
 * Erosion model of Hashish (1989) for ductile materials: particles at glancing angles cut material from the upper part of
 * the cut front, particles that strike its bottom remove material by deformation, and the depths add up.
 *
 * <p>h = h<sub>c</sub> + h<sub>d</sub><br>
 * h<sub>c</sub> = d<sub>j</sub> (V<sub>0</sub> / C<sub>k</sub>) (14 m<sub>a</sub> / (&pi; u d<sub>j</sub><sup>2</sup> &rho;<sub>p</sub>))<sup>2/5</sup><br>
 * C<sub>k</sub> = sqrt(3 &sigma;<sub>f</sub> R<sub>f</sub><sup>3/5</sup> / &rho;<sub>p</sub>)<br>
 * 1/h<sub>d</sub> = &pi; d<sub>j</sub> &sigma;<sub>f</sub> u / (2 C<sub>1</sub> m<sub>a</sub> (V<sub>0</sub> - V<sub>e</sub>)<sup>2</sup>) + (C<sub>f</sub> / d<sub>j</sub>) V<sub>0</sub> / (V<sub>0</sub> - V<sub>e</sub>)
 *
 * <p>Symbols: h depth in m; d<sub>j</sub> bore of the focusing tube at its exit in m; V<sub>0</sub> particle speed in m/s; m<sub>a</sub> abrasive flow rate
 * in kg/s; &rho;<sub>p</sub> density of a particle in kg/m<sup>3</sup>; u feed rate in m/s; &sigma;<sub>f</sub> flow strength in Pa; R<sub>f</sub> roundness of the
 * particles, 0.35 to 0.4; C<sub>1</sub> share of the particles that deform, about 1; C<sub>f</sub> friction coefficient of the wall, 0.002; V<sub>e</sub>
 * threshold speed of the particles in m/s, not published, 0 here as is common for metals.
 *
 * <p>The form is re-derived from memory of the paper: a derived model, whose strengths and factors a shop should calibrate.
 * It applies to materials with a known flow strength only. With &sigma;<sub>f</sub> = E/14 and a mixing efficiency of 0.7 it is
 * 20 to 60 percent above the machinability model for aluminium, steel and titanium; the depth is about proportional to the
 * square of the particle speed, so that each percent of mixing efficiency counts twice.
 *
 * <p>This is the short form. {@link #withInitialAngle} adds the angle at which particles first strike the front, and {@link
 * #withElasticThreshold} the threshold speed of elastic contact: together the complete model.
 *
 * <p>Worked number: steel (E 200 GPa), abrasive at 474 m/s and 600 g/min, tube 1.0 mm, 2 mm/s, R<sub>f</sub> 0.4: 6.0 mm by cutting
 * and 45.5 mm by deformation.
 */
public final class ErosionFeed implements FeedModel {

    private static final long serialVersionUID = 1L;

    private static final double ROUNDNESS = 0.4;
    private static final double FRICTION = 0.002;

    /** Garnet as published with the model. */
    private static final double GARNET_MODULUS_PA = 350e9;

    private static final double GARNET_POISSON = 0.25;
    private static final double GARNET_KG_PER_M3 = 3950;
    private static final double ASSUMED_UNCERTAINTY = 0.4;
    private static final double GUESS_M_PER_S = 2e-3;

    private static final Evidence EVIDENCE = Evidence.of(
                    EvidenceGrade.DERIVED, Source.of("Hashish, J. Eng. Mater. Technol. 111 (1989) 154-162"))
            .withNote("Re-derived from memory of the paper; roundness 0.4, friction 0.002, deforming share 1, threshold"
                    + " speed 0. The scatter of 40 percent is assumed.");

    private static final ErosionFeed STANDARD =
            new ErosionFeed(new Values(FlowStrengths.standard(), ROUNDNESS, 1, 0, 0, ASSUMED_UNCERTAINTY, EVIDENCE));

    /** Checked content, and the serial form. */
    private record Values(
            FlowStrengths strengths,
            double roundness,
            double deformingShare,
            double thresholdMPerS,
            double forceRatio,
            double modelUncertainty,
            Evidence evidence)
            implements Serializable {

        private static final long serialVersionUID = 1L;

        Values {
            Objects.requireNonNull(strengths, "strengths");
            roundness = Require.between("roundness of the particles", roundness, 0.01, 1, Units.ONE, "1 is a sphere");
            deformingShare = Require.positive("deforming share of the particles", deformingShare, Units.ONE);
            thresholdMPerS =
                    Require.notNegative("threshold speed of the particles", thresholdMPerS, Units.METRE_PER_SECOND);
            forceRatio = Require.notNegative("ratio of normal to tangential force", forceRatio, Units.ONE);
            modelUncertainty = Settings.uncertainty(modelUncertainty);
            Objects.requireNonNull(evidence, "evidence");
        }

        Values withThreshold(double speedMPerS) {
            return new Values(strengths, roundness, deformingShare, speedMPerS, forceRatio, modelUncertainty, evidence);
        }

        Values withForceRatio(double ratio) {
            return new Values(strengths, roundness, deformingShare, thresholdMPerS, ratio, modelUncertainty, evidence);
        }

        private Object readResolve() {
            return new ErosionFeed(this);
        }
    }

    private final transient Values values;

    private ErosionFeed(Values values) {
        this.values = values;
    }

    /** {@return the model with its standard factors and flow strengths} */
    public static ErosionFeed standard() {
        return STANDARD;
    }

    /**
     * Returns this model with other flow strengths.
     *
     * @param strengths flow strengths
     * @return the model
     */
    public ErosionFeed withStrengths(FlowStrengths strengths) {
        return new ErosionFeed(new Values(
                strengths,
                values.roundness,
                values.deformingShare,
                values.thresholdMPerS,
                values.forceRatio,
                values.modelUncertainty,
                values.evidence));
    }

    /**
     * Returns this model with another particle shape.
     *
     * @param roundness R<sub>f</sub>, 0.01 to 1; 0.35 to 0.4 for garnet
     * @return the model
     */
    public ErosionFeed withRoundness(double roundness) {
        return new ErosionFeed(new Values(
                values.strengths,
                roundness,
                values.deformingShare,
                values.thresholdMPerS,
                values.forceRatio,
                values.modelUncertainty,
                values.evidence));
    }

    /**
     * Returns this model with another share of particles that deform.
     *
     * @param share C<sub>1</sub>, above 0; about 1
     * @return the model
     */
    public ErosionFeed withDeformingShare(double share) {
        return new ErosionFeed(new Values(
                values.strengths,
                values.roundness,
                share,
                values.thresholdMPerS,
                values.forceRatio,
                values.modelUncertainty,
                values.evidence));
    }

    /**
     * Returns this model with a threshold speed, below which a particle removes nothing by deformation.
     *
     * @param threshold V<sub>e</sub>, 0 or more
     * @return the model
     */
    public ErosionFeed withThreshold(Quantity<Speed> threshold) {
        return new ErosionFeed(values.withThreshold(Kind.SPEED.si(Objects.requireNonNull(threshold, "threshold"))));
    }

    /**
     * Returns this model with the threshold speed at which the contact of a particle with the workpiece begins to yield,
     * V<sub>e</sub> = 5 &pi;<sup>2</sup> &sigma;<sup>5/2</sup> / &rho;<sub>p</sub><sup>1/2</sup> ((1 - n<sub>p</sub><sup>2</sup>)/E<sub>p</sub> + (1 - n<sub>w</sub><sup>2</sup>)/E<sub>w</sub>)<sup>2</sup>. Particles are garnet: E<sub>p</sub> 350 GPa, Poisson
     * number 0.25, as published with the model. The source evaluates it in mm, kg and MPa without the factor of
     * 1000 between MPa and kg/(mm s2), and has a threshold smaller by the root of that.
     *
     * @param elasticLimit elastic limit sigma of the workpiece, above 0
     * @param modulus Young's modulus E<sub>w</sub> of the workpiece, above 0
     * @param poisson Poisson number n<sub>w</sub> of the workpiece, 0 to 0.5
     * @return the model with that threshold; some 2 m/s for titanium
     */
    public ErosionFeed withElasticThreshold(
            Quantity<Pressure> elasticLimit, Quantity<Pressure> modulus, double poisson) {
        Objects.requireNonNull(elasticLimit, "elasticLimit");
        Objects.requireNonNull(modulus, "modulus");
        double limitPa = Require.positive("elastic limit", Kind.PRESSURE.si(elasticLimit), Units.MEGAPASCAL);
        double modulusPa = Require.positive("Young's modulus", Kind.PRESSURE.si(modulus), Units.MEGAPASCAL);
        double number = Require.between("Poisson number", poisson, 0, 0.5, Units.ONE, "incompressible");
        double compliance =
                (1 - GARNET_POISSON * GARNET_POISSON) / GARNET_MODULUS_PA + (1 - number * number) / modulusPa;
        return new ErosionFeed(values.withThreshold(PhysicsKernel.elasticSpeed(limitPa, GARNET_KG_PER_M3, compliance)));
    }

    /**
     * Returns this model with the angles of attack of the complete model: particles first strike the front at a<sub>0</sub> = 0.768
     * R<sub>f</sub><sup>2/5</sup> (C<sub>k</sub> / (K<sup>2</sup> V<sub>0</sub>))<sup>1/3</sup>, the cutting zone ends at a<sub>t</sub> = d<sub>j</sub> / h<sub>c</sub> of the short form, and it is as deep as 0.4 d<sub>j</sub>
     * (1/a<sub>t</sub> - 1/a<sub>0</sub>), or absent where a<sub>t</sub> is larger. The published equation has 1 mm in place of d<sub>j</sub> before 1/a<sub>0</sub>, which no unit
     * bears out, and by which the depth would not vanish where the angles are equal; this one has the bore.
     *
     * <p>The cutting zone is shallower than by the short form, by more than a factor of 2.5.
     *
     * @param forceRatio ratio K of normal to tangential force at a particle, above 0; 3 as published
     * @return the model with both angles
     */
    public ErosionFeed withInitialAngle(double forceRatio) {
        return new ErosionFeed(
                values.withForceRatio(Require.positive("ratio of normal to tangential force", forceRatio, Units.ONE)));
    }

    /**
     * Returns this model with another scatter and evidence, as found from test cuts.
     *
     * @param relativeUncertainty relative standard uncertainty of a feed rate, 0 to 3
     * @param evidence evidence for it
     * @return the model
     */
    public ErosionFeed withModelUncertainty(double relativeUncertainty, Evidence evidence) {
        return new ErosionFeed(new Values(
                values.strengths,
                values.roundness,
                values.deformingShare,
                values.thresholdMPerS,
                values.forceRatio,
                relativeUncertainty,
                evidence));
    }

    /**
     * Returns the depth removed by particles at glancing angles.
     *
     * @param jet jet
     * @param material material
     * @param feed feed rate, above 0
     * @return h<sub>c</sub>
     */
    public Quantity<Length> cuttingWear(AbrasiveJet jet, Material material, Quantity<Speed> feed) {
        return Kind.LENGTH.of(cuttingWear(Objects.requireNonNull(jet, "jet"), strength(material), Settings.feed(feed)));
    }

    /**
     * Returns the depth removed by deformation.
     *
     * @param jet jet
     * @param material material
     * @param feed feed rate, above 0
     * @return h<sub>d</sub>
     */
    public Quantity<Length> deformationWear(AbrasiveJet jet, Material material, Quantity<Speed> feed) {
        return Kind.LENGTH.of(
                deformationWear(Objects.requireNonNull(jet, "jet"), strength(material), Settings.feed(feed)));
    }

    private double cuttingWear(JetSettings jet, double strengthPa, double feedMPerS) {
        double particleKgPerM3 = Kind.DENSITY.si(jet.abrasive().density());
        double characteristic = PhysicsKernel.characteristicSpeed(strengthPa, values.roundness, particleKgPerM3);
        double bore = jet.tubeExitBoreSi();
        double plain = PhysicsKernel.cuttingWear(
                bore, jet.particleSpeedSi(), characteristic, jet.abrasiveFlowSi(), feedMPerS, particleKgPerM3);
        return values.forceRatio == 0
                ? plain
                : PhysicsKernel.cuttingWear(
                        bore,
                        PhysicsKernel.attackAngle(bore, plain),
                        PhysicsKernel.initialAngle(
                                jet.particleSpeedSi(), characteristic, values.roundness, values.forceRatio));
    }

    private double deformationWear(JetSettings jet, double strengthPa, double feedMPerS) {
        return PhysicsKernel.deformationWear(
                jet.tubeExitBoreSi(),
                jet.particleSpeedSi(),
                values.thresholdMPerS,
                strengthPa,
                values.deformingShare,
                jet.abrasiveFlowSi(),
                feedMPerS,
                FRICTION);
    }

    private double strength(Material material) {
        OptionalDouble strengthPa = values.strengths.strengthSi(Objects.requireNonNull(material, "material"));
        if (strengthPa.isEmpty()) {
            throw new NoSolutionException(Message.of(
                            "no-flow-strength",
                            "the erosion model has no flow strength of {material}; state one, or calibrate it from"
                                    + " test cuts")
                    .with("material", material.name()));
        }
        return strengthPa.getAsDouble();
    }

    @Override
    public String name() {
        return "erosion";
    }

    @Override
    public Evidence evidence() {
        return values.evidence;
    }

    @Override
    public double separationDepthSi(JetSettings jet, Material material, double feedMPerS) {
        Objects.requireNonNull(jet, "jet");
        Objects.requireNonNull(material, "material");
        double strengthPa = strength(material);
        return cuttingWear(jet, strengthPa, feedMPerS) + deformationWear(jet, strengthPa, feedMPerS);
    }

    @Override
    public double separationFeedSi(JetSettings jet, Material material, double depthM) {
        Objects.requireNonNull(jet, "jet");
        return LogRoot.ofDecreasing(feed -> separationDepthSi(jet, material, feed), depthM, GUESS_M_PER_S);
    }

    @Override
    public double relativeUncertainty(Material material) {
        Objects.requireNonNull(material, "material");
        return values.modelUncertainty;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof ErosionFeed that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return name();
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
