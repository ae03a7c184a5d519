package dev.waterjet.vessel;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.MassFlow;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.water.WaterState;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Area;
import javax.measure.quantity.Length;
import javax.measure.quantity.Pressure;

/**
 * Opening of a crack through a wall, to see which leak shows: a crack of length 2 <i>c</i> in a plate under a stress &sigma; opens by
 * the area 2 &pi; &sigma; <i>c</i><sup>2</sup>/<i>E</i> (elastic centre crack, plane stress; form from memory). A crack of 5 mm at
 * 200 MPa in steel opens by 0.039 mm<sup>2</sup>, as much as an orifice of 0.22 mm: it shows as a lack of pressure.
 *
 * <p>An order of magnitude only: curvature and thickness of the wall and plastic strain are left out.
 *
 * @param openingArea area of the opening, within a factor of about 3 (assumed)
 * @param equivalentBore bore of the round opening of that area
 * @param cautions cautions that apply, one or more
 */
public record CrackLeak(Estimate<Area> openingArea, Quantity<Length> equivalentBore, List<Caution> cautions)
        implements Described {

    /** Standard uncertainty of the logarithm: assumed. */
    private static final double LOG_UNCERTAINTY = 1;

    private static final double DISCHARGE = 0.65;

    /**
     * Checks the components.
     *
     * @param openingArea area of the opening
     * @param equivalentBore bore of the round opening of that area
     * @param cautions cautions that apply
     */
    public CrackLeak {
        Objects.requireNonNull(openingArea, "openingArea");
        Objects.requireNonNull(equivalentBore, "equivalentBore");
        cautions = List.copyOf(Objects.requireNonNull(cautions, "cautions"));
    }

    /**
     * Returns the opening of a crack.
     *
     * @param length length of the crack, above 0
     * @param stress stress across the crack without it, above 0
     * @param youngsModulus modulus of elasticity of the wall, above 0
     * @return the opening
     */
    public static CrackLeak of(Quantity<Length> length, Quantity<Pressure> stress, Quantity<Pressure> youngsModulus) {
        Objects.requireNonNull(length, "length");
        Objects.requireNonNull(stress, "stress");
        Objects.requireNonNull(youngsModulus, "youngsModulus");
        double halfM = Require.positive("length of the crack", Kind.LENGTH.si(length), Units.MILLIMETRE) / 2;
        double stressPa = Require.positive("stress across the crack", Kind.PRESSURE.si(stress), Units.MEGAPASCAL);
        double modulusPa = Require.positive(
                "modulus of elasticity of the wall", Kind.PRESSURE.si(youngsModulus), Units.GIGAPASCAL);
        double areaM2 = 2 * Math.PI * (stressPa / modulusPa) * halfM * halfM;
        return new CrackLeak(
                Estimate.withinFactor(Kind.AREA, areaM2, LOG_UNCERTAINTY, VesselCautions.all()),
                Kind.LENGTH.of(Math.sqrt(4 / Math.PI * areaM2)),
                VesselCautions.all());
    }

    /**
     * Returns the mass flow through the crack by the formula of an orifice with a discharge coefficient of 0.65 (assumed):
     * <i>C</i><sub>d</sub> <i>A</i> &radic;(2 &rho; <i>p</i>).
     *
     * @param pressure gauge pressure inside, 0 or more
     * @param atRest water at ambient pressure
     * @return the mass flow, within a factor of about 3
     */
    public Estimate<MassFlow> massFlow(Quantity<Pressure> pressure, WaterState atRest) {
        Objects.requireNonNull(pressure, "pressure");
        Objects.requireNonNull(atRest, "atRest");
        double pressurePa = Require.notNegative("pressure at the crack", Kind.PRESSURE.si(pressure), Units.MEGAPASCAL);
        double flow = DISCHARGE * openingArea.si() * Math.sqrt(2 * atRest.densitySi() * pressurePa);
        return flow == 0
                ? Estimate.of(Kind.MASS_FLOW, 0, 0).with(cautions)
                : Estimate.withinFactor(Kind.MASS_FLOW, flow, LOG_UNCERTAINTY, cautions);
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("crack leak")
                .put("opening_area", openingArea)
                .put("equivalent_bore", Kind.LENGTH, Kind.LENGTH.si(equivalentBore))
                .put("cautions", cautions)
                .map();
    }

    @Override
    public String toString() {
        return "crack as open as a bore of " + QuantityText.forPeople(Kind.LENGTH, equivalentBore);
    }
}
