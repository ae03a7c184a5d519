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
 * Pressures at which the wall of an ideal tube yields. Neither is a working pressure: codes demand margins against fatigue,
 * fracture and scatter of the material that are not calculated here.
 *
 * @param firstYield pressure at which the bore begins to yield, without autofrettage
 * @param fullPlastic pressure at which the whole wall has yielded, if the material does not harden
 * @param cautions cautions that apply, one or more
 */
public record TubeLimits(Quantity<Pressure> firstYield, Quantity<Pressure> fullPlastic, List<Caution> cautions)
        implements Described {

    /**
     * Checks the components.
     *
     * @param firstYield pressure at which the bore begins to yield
     * @param fullPlastic pressure at which the whole wall has yielded
     * @param cautions cautions that apply
     */
    public TubeLimits {
        Objects.requireNonNull(firstYield, "firstYield");
        Objects.requireNonNull(fullPlastic, "fullPlastic");
        cautions = List.copyOf(Objects.requireNonNull(cautions, "cautions"));
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("tube limits")
                .put("first_yield_pressure", Kind.PRESSURE, Kind.PRESSURE.si(firstYield))
                .put("full_plastic_pressure", Kind.PRESSURE, Kind.PRESSURE.si(fullPlastic))
                .put("cautions", cautions)
                .map();
    }

    @Override
    public String toString() {
        return "first yield at " + QuantityText.forPeople(Kind.PRESSURE, firstYield) + ", full plastic at "
                + QuantityText.forPeople(Kind.PRESSURE, fullPlastic);
    }
}
