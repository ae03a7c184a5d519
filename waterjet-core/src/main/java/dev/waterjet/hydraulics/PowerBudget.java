package dev.waterjet.hydraulics;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Power;
import javax.measure.quantity.Pressure;

/** Hydraulic power that a pump can deliver at a pressure, and the orifices that it can feed with it. */
public final class PowerBudget implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private final double powerW;
    private final double pressurePa;

    private PowerBudget(double powerW, double pressurePa) {
        this.powerW = Require.positive("hydraulic power of the pump", powerW, Units.KILOWATT);
        this.pressurePa = Require.positive("pressure at the orifice", pressurePa, Units.MEGAPASCAL);
    }

    /**
     * A budget of hydraulic power, which is the motor's power times the efficiency of the pump.
     *
     * @param hydraulicPower power that goes into the water
     * @param pressure gauge pressure at the orifice
     * @return the budget
     */
    public static PowerBudget of(Quantity<Power> hydraulicPower, Quantity<Pressure> pressure) {
        return new PowerBudget(Kind.POWER.si(hydraulicPower), Kind.PRESSURE.si(pressure));
    }

    /**
     * The largest orifice that the budget feeds, when a number of equal heads share it.
     *
     * @param like an orifice whose jewel and discharge coefficient the answer has
     * @param heads how many heads cut at once, 1 or more
     * @return the largest orifice
     */
    public Orifice largestOrifice(Orifice like, int heads) {
        Require.atLeast("number of heads", heads, 1, Units.ONE, "");
        double asked = powerOf(like) * heads;
        // power goes with the square of the bore
        return like.withBore(Kind.LENGTH.of(like.boreSi() * Math.sqrt(powerW / asked)));
    }

    /**
     * How many heads with such an orifice the budget feeds at once.
     *
     * @param orifice orifice of each head
     * @return the number of heads, 0 if not even one
     */
    public int headsFed(Orifice orifice) {
        return (int) Math.min(Integer.MAX_VALUE, Math.floor(powerW / powerOf(orifice)));
    }

    /**
     * Share of the budget that a number of heads takes.
     *
     * @param orifice orifice of each head
     * @param heads how many heads cut at once, 1 or more
     * @return the share: 1 is the whole budget, more cannot be fed
     */
    public double share(Orifice orifice, int heads) {
        Require.atLeast("number of heads", heads, 1, Units.ONE, "");
        return powerOf(orifice) * heads / powerW;
    }

    private double powerOf(Orifice orifice) {
        return Kind.POWER.si(WaterJet.of(orifice, Kind.PRESSURE.of(pressurePa)).hydraulicPower());
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("power budget")
                .put("hydraulic_power", Kind.POWER, powerW)
                .put("pressure", Kind.PRESSURE, pressurePa)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof PowerBudget that && powerW == that.powerW && pressurePa == that.pressurePa;
    }

    @Override
    public int hashCode() {
        return Objects.hash(powerW, pressurePa);
    }

    @Override
    public String toString() {
        return QuantityText.print(Kind.POWER, Kind.POWER.of(powerW), Units.KILOWATT, 4) + " at "
                + QuantityText.print(Kind.PRESSURE, Kind.PRESSURE.of(pressurePa), Units.MEGAPASCAL, 4);
    }
}
