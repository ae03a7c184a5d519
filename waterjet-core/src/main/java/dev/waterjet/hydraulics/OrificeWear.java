package dev.waterjet.hydraulics;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
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
 * Wear of a used orifice, from its flow and pressure.
 *
 * <p>Flow and pressure determine the effective area <i>C</i><sub>d</sub> <i>A</i> only: an orifice with a rounded edge has a
 * larger flow at the same bore. The two extreme explanations are a larger bore and a larger discharge coefficient; a microscope
 * distinguishes them.
 *
 * @param asNew the orifice when it was new
 * @param effectiveAreaRatio flow over flow when new at equal pressure, above 0; above 1 for a worn orifice, below for a
 *     clogged one
 */
public record OrificeWear(Orifice asNew, Quantity<Dimensionless> effectiveAreaRatio)
        implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    /**
     * Checks the components.
     *
     * @throws dev.waterjet.measure.DomainException if the ratio is not above 0
     * @param asNew the orifice when it was new
     * @param effectiveAreaRatio flow over flow when new at equal pressure, above 0; above 1 for a worn orifice, below for a clogged one
     */
    public OrificeWear {
        Objects.requireNonNull(effectiveAreaRatio, "effectiveAreaRatio");
        Objects.requireNonNull(asNew, "asNew");
        effectiveAreaRatio =
                Kind.RATIO.of(Require.positive("effective area ratio", Kind.RATIO.si(effectiveAreaRatio), Units.ONE));
    }

    /**
     * Returns the wear of an orifice from a measurement in operation.
     *
     * @param asNew the orifice when it was new
     * @param pressure gauge pressure at the orifice, above 0
     * @param flow water flow rate at ambient density, above 0
     * @param temperature temperature of the water
     * @return the wear
     */
    public static OrificeWear measured(
            Orifice asNew, Quantity<Pressure> pressure, Quantity<VolumeFlow> flow, Quantity<Temperature> temperature) {
        Objects.requireNonNull(asNew, "asNew");
        Objects.requireNonNull(flow, "flow");
        Objects.requireNonNull(pressure, "pressure");
        Objects.requireNonNull(temperature, "temperature");
        double pressurePa = Require.positive("pressure at the orifice", Kind.PRESSURE.si(pressure), Units.MEGAPASCAL);
        double flowM3PerS = Require.positive("water flow rate", Kind.VOLUME_FLOW.si(flow), Units.LITRE_PER_MINUTE);
        double densityKgPerM3 = Water.stable()
                .atSi(IsentropicKernel.ATMOSPHERE_PA, Kind.TEMPERATURE.si(temperature))
                .densitySi();
        double flowAsNew =
                WaterJetKernel.volumeFlow(asNew.boreSi(), asNew.dischargeCoefficientSi(), pressurePa, densityKgPerM3);
        return new OrificeWear(asNew, Kind.RATIO.of(flowM3PerS / flowAsNew));
    }

    private double ratio() {
        return Kind.RATIO.si(effectiveAreaRatio);
    }

    /**
     * {@return the bore, if the discharge coefficient is that of the new orifice, with the uncertainty of that coefficient}
     */
    public Estimate<Length> boreAtConstantCoefficient() {
        double boreM = asNew.boreSi() * Math.sqrt(ratio());
        return Estimate.of(
                Kind.LENGTH, boreM, boreM * asNew.dischargeCoefficient().relativeUncertainty() / 2);
    }

    /**
     * Returns the discharge coefficient, if the bore is that of the new orifice. A value above 1 is impossible: then the bore
     * has grown.
     *
     * @return the coefficient, with the relative uncertainty of that of the new orifice
     */
    public Estimate<Dimensionless> coefficientAtConstantBore() {
        double coefficient = asNew.dischargeCoefficientSi() * ratio();
        return Estimate.of(
                Kind.RATIO,
                coefficient,
                coefficient * asNew.dischargeCoefficient().relativeUncertainty());
    }

    /**
     * Returns the pressure of the worn orifice at the flow of the new one, <i>p</i>/ratio<sup>2</sup>: that of a pump at its
     * maximum flow.
     *
     * @param pressure gauge pressure with the new orifice
     * @return gauge pressure with the worn orifice
     */
    public Quantity<Pressure> pressureAtEqualFlow(Quantity<Pressure> pressure) {
        Objects.requireNonNull(pressure, "pressure");
        return Kind.PRESSURE.of(Kind.PRESSURE.si(pressure) / (ratio() * ratio()));
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("orifice wear")
                .put("as_new", asNew)
                .put("effective_area_ratio", ratio())
                .put("bore_at_constant_coefficient", boreAtConstantCoefficient())
                .put("coefficient_at_constant_bore", coefficientAtConstantBore())
                .map();
    }

    @Override
    public String toString() {
        return asNew + ", effective area " + QuantityText.forPeople(Kind.RATIO, effectiveAreaRatio)
                + " of that when new";
    }
}
