package dev.waterjet.vessel;

import dev.waterjet.evidence.Caution;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Pressure;

/**
 * Principal stresses at a place of a wall under pressure; tension is positive.
 *
 * @param hoop hoop stress
 * @param radial radial stress
 * @param axial axial stress
 * @param cautions cautions that apply, one or more
 */
public record WallStress(
        Quantity<Pressure> hoop, Quantity<Pressure> radial, Quantity<Pressure> axial, List<Caution> cautions)
        implements Described {

    /**
     * Checks the components.
     *
     * @param hoop hoop stress
     * @param radial radial stress
     * @param axial axial stress
     * @param cautions cautions that apply
     */
    public WallStress {
        Objects.requireNonNull(hoop, "hoop");
        Objects.requireNonNull(radial, "radial");
        Objects.requireNonNull(axial, "axial");
        cautions = List.copyOf(Objects.requireNonNull(cautions, "cautions"));
    }

    /**
     * Returns the equivalent stress: that of a tensile test with the same distance from yielding.
     *
     * @param criterion yield criterion
     * @return the equivalent stress, 0 or more
     */
    public Quantity<Pressure> equivalent(YieldCriterion criterion) {
        Objects.requireNonNull(criterion, "criterion");
        return Kind.PRESSURE.of(TubeKernel.equivalent(
                criterion, Kind.PRESSURE.si(hoop), Kind.PRESSURE.si(radial), Kind.PRESSURE.si(axial)));
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("wall stress")
                .put("hoop_stress", Kind.PRESSURE, Kind.PRESSURE.si(hoop))
                .put("radial_stress", Kind.PRESSURE, Kind.PRESSURE.si(radial))
                .put("axial_stress", Kind.PRESSURE, Kind.PRESSURE.si(axial))
                .put("cautions", cautions)
                .map();
    }

    @Override
    public String toString() {
        return "hoop stress " + QuantityText.forPeople(Kind.PRESSURE, hoop);
    }
}
