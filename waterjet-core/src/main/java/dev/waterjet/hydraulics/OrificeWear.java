package dev.waterjet.hydraulics;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.measure.VolumeFlow;
import dev.waterjet.water.Water;
import java.io.Serializable;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Temperature;

/**
 * What flow and pressure tell about a used orifice.
 *
 * <p>They reveal one number, the passage {@code Cd A}: a jewel whose edge has rounded passes more at the same bore. So there
 * are two readings of it, a wider bore or a larger coefficient, and only a microscope tells which is true.
 */
public final class OrificeWear implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private final Orifice asNew;
    private final double effectiveAreaRatio;

    private OrificeWear(Orifice asNew, double effectiveAreaRatio) {
        this.asNew = Objects.requireNonNull(asNew, "asNew");
        this.effectiveAreaRatio = Require.positive("passage over passage as new", effectiveAreaRatio, Units.ONE);
    }

    /**
     * The wear of an orifice that was measured while it ran.
     *
     * @param asNew the orifice when it was new
     * @param pressure gauge pressure at the head
     * @param flow water used, by volume at the intake
     * @param temperature temperature of the water
     * @return the wear
     */
    public static OrificeWear measured(
            Orifice asNew, Quantity<Pressure> pressure, Quantity<VolumeFlow> flow, Quantity<Temperature> temperature) {
        double pressurePa = Require.positive("pressure at the orifice", Kind.PRESSURE.si(pressure), Units.MEGAPASCAL);
        double flowM3PerS = Require.positive("flow", Kind.VOLUME_FLOW.si(flow), Units.LITRE_PER_MINUTE);
        double densityKgPerM3 = Water.stable()
                .atSi(IsentropicKernel.ATMOSPHERE_PA, Kind.TEMPERATURE.si(temperature))
                .densitySi();
        double flowAsNew =
                WaterJetKernel.volumeFlow(asNew.boreSi(), asNew.dischargeCoefficientSi(), pressurePa, densityKgPerM3);
        return new OrificeWear(asNew, flowM3PerS / flowAsNew);
    }

    /**
     * Flow now over flow as new, at equal pressure.
     *
     * @return the ratio; above 1 for a worn orifice, below for a clogged one
     */
    public Quantity<Dimensionless> effectiveAreaRatio() {
        return Kind.RATIO.of(effectiveAreaRatio);
    }

    /**
     * The bore, if the discharge coefficient is what it was.
     *
     * @return the bore, with the uncertainty of that coefficient
     */
    public Estimate<Length> boreAtConstantCoefficient() {
        double boreM = asNew.boreSi() * Math.sqrt(effectiveAreaRatio);
        return Estimate.of(
                Kind.LENGTH, boreM, boreM * asNew.dischargeCoefficient().relativeUncertainty() / 2);
    }

    /**
     * The discharge coefficient, if the bore is what it was. Above 1 it cannot be so: then the bore has grown.
     *
     * @return the coefficient, with its uncertainty as new
     */
    public Estimate<Dimensionless> coefficientAtConstantBore() {
        double coefficient = asNew.dischargeCoefficientSi() * effectiveAreaRatio;
        return Estimate.of(
                Kind.RATIO,
                coefficient,
                coefficient * asNew.dischargeCoefficient().relativeUncertainty());
    }

    /**
     * Pressure that is left if the pump can bring no more flow than the new orifice took, {@code p/ratio^2}.
     *
     * @param pressure gauge pressure with the new orifice
     * @return gauge pressure with the worn one
     */
    public Quantity<Pressure> pressureAtEqualFlow(Quantity<Pressure> pressure) {
        return Kind.PRESSURE.of(Kind.PRESSURE.si(pressure) / (effectiveAreaRatio * effectiveAreaRatio));
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("orifice wear")
                .put("as_new", asNew)
                .put("effective_area_ratio", effectiveAreaRatio)
                .put("bore_at_constant_coefficient", boreAtConstantCoefficient())
                .put("coefficient_at_constant_bore", coefficientAtConstantBore())
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof OrificeWear that && asNew.equals(that.asNew) && effectiveAreaRatio == that.effectiveAreaRatio;
    }

    @Override
    public int hashCode() {
        return Objects.hash(asNew, effectiveAreaRatio);
    }

    @Override
    public String toString() {
        return asNew + " that now passes "
                + dev.waterjet.measure.QuantityText.print(Kind.RATIO, effectiveAreaRatio(), Units.PERCENT, 4);
    }
}
