package dev.waterjet.circuit;

import dev.waterjet.hydraulics.DirectDrivePump;
import dev.waterjet.measure.Description;
import java.util.Map;
import java.util.Objects;

/**
 * Direct-drive pump in a circuit: it turns at constant speed and delivers what its plungers displace beyond the compression of the
 * water, whatever the pressure.
 *
 * @param pump the pump
 */
public record DirectDrive(DirectDrivePump pump) implements PumpDrive {

    private static final long serialVersionUID = 1L;

    /**
     * Checks the component.
     *
     * @param pump the pump
     */
    public DirectDrive {
        Objects.requireNonNull(pump, "pump");
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("direct drive").put("pump", pump).map();
    }

    @Override
    public String toString() {
        return pump.toString();
    }
}
