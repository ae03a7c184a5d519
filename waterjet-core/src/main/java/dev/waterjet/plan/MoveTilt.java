package dev.waterjet.plan;

import dev.waterjet.kerf.HeadTilt;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Experimental;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;

/**
 * Tilt of the head along a move, linear in the distance between both ends. Each is a unit vector in the frame of the machine
 * ({@link HeadTilt#axisX}, {@code axisY}, {@code axisZ}, towards the head) and two angles ({@link HeadTilt#gimbalA},
 * {@link HeadTilt#gimbalB}).
 *
 * @param start tilt at the start of the move
 * @param end tilt at its end
 * @param standOff distance from the tip of the nozzle to the workpiece along the axis, 0 or more
 */
@Experimental
public record MoveTilt(HeadTilt start, HeadTilt end, Quantity<Length> standOff) implements Described {

    /**
     * Checks the components.
     *
     * @param start tilt at the start of the move
     * @param end tilt at its end
     * @param standOff distance from the tip of the nozzle to the workpiece along the axis
     */
    public MoveTilt {
        Objects.requireNonNull(standOff, "standOff");
        Objects.requireNonNull(start, "start");
        Objects.requireNonNull(end, "end");
        Require.notNegative("stand-off distance", Kind.LENGTH.si(standOff), Units.MILLIMETRE);
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("tilt of a move")
                .put("start", start)
                .put("end", end)
                .put("stand_off", Kind.LENGTH, Kind.LENGTH.si(standOff))
                .map();
    }

    @Override
    public String toString() {
        return "from " + start + " to " + end;
    }
}
