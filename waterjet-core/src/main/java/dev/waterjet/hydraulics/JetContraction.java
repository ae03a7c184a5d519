package dev.waterjet.hydraulics;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.water.Saturation;
import dev.waterjet.water.Water;
import dev.waterjet.water.WaterState;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;

/**
 * Contracted jet behind an orifice: its diameter, speed, Reynolds and Weber numbers.
 *
 * <p>The discharge coefficient <i>C</i><sub>d</sub> is relative to the incompressible speed at ambient density. Mass balance gives
 * the contraction coefficient <i>C</i><sub>c</sub> = <i>C</i><sub>d</sub> &rho;<sub>0</sub>/(&rho; <i>C</i><sub>v</sub> &psi;), with the density &rho; of
 * the jet, the velocity coefficient <i>C</i><sub>v</sub> and the ratio &psi; of the isentropic to the incompressible speed; the
 * diameter is the bore times its root. At 380 MPa, 0.25 mm, <i>C</i><sub>d</sub> 0.65 and <i>C</i><sub>v</sub> 0.98 it is 0.207 mm.
 *
 * @param coefficient area of the jet over that of the orifice, above 0 to 1
 * @param diameter diameter of the jet
 * @param speed speed of the jet
 * @param reynolds Reynolds number of the jet, by its diameter
 * @param weber Weber number of the jet, by its diameter and its own density
 */
public record JetContraction(
        double coefficient, Quantity<Length> diameter, Quantity<Speed> speed, double reynolds, double weber)
        implements Described {

    /**
     * Checks the components.
     *
     * @param coefficient area of the jet over that of the orifice, above 0 to 1
     * @param diameter diameter of the jet
     * @param speed speed of the jet
     * @param reynolds Reynolds number of the jet
     * @param weber Weber number of the jet
     */
    public JetContraction {
        Require.positive("contraction coefficient", coefficient, Units.ONE);
        Require.atMost("contraction coefficient", coefficient, 1, Units.ONE, "the jet would be wider than the orifice");
        Objects.requireNonNull(diameter, "diameter");
        Objects.requireNonNull(speed, "speed");
        Require.positive("Reynolds number", reynolds, Units.ONE);
        Require.positive("Weber number", weber, Units.ONE);
    }

    /**
     * Returns the contraction of an isentropic jet. Its speed model is not used.
     *
     * @param jet jet, with water colder than boiling at its exit
     * @param velocityCoefficient speed of the jet over the isentropic speed, above 0 to 1; 0.97 is published for sharp plates
     *     (Encyclopaedia Britannica, 1911), 0.98 with a standard uncertainty of 0.01 is usual for sharp jewels (value from memory)
     * @return the contraction
     * @throws dev.waterjet.measure.DomainException if the jet would be wider than the orifice
     */
    public static JetContraction of(WaterJet jet, double velocityCoefficient) {
        Objects.requireNonNull(jet, "jet");
        Require.positive("velocity coefficient", velocityCoefficient, Units.ONE);
        Require.atMost("velocity coefficient", velocityCoefficient, 1, Units.ONE, "");
        double temperatureK = Kind.TEMPERATURE.si(jet.temperature());
        WaterState supply = Water.stable().atSi(jet.pressureSi() + IsentropicKernel.ATMOSPHERE_PA, temperatureK);
        WaterState exit = IsentropicKernel.exit(supply);
        double speed = velocityCoefficient * IsentropicKernel.speed(supply, exit);
        // mass flow over area and speed: the density at rest is in the mass flow
        double boreM2 = WaterJetKernel.area(jet.orifice().boreSi());
        double coefficient = jet.massFlowSi() / (exit.densitySi() * speed * boreM2);
        double diameterM = jet.orifice().boreSi() * Math.sqrt(coefficient);
        double tension = Kind.SURFACE_TENSION.si(Saturation.surfaceTension(exit.temperature()));
        double momentum = exit.densitySi() * speed * diameterM;
        return new JetContraction(
                coefficient,
                Kind.LENGTH.of(diameterM),
                Kind.SPEED.of(speed),
                momentum / exit.viscositySi(),
                momentum * speed / tension);
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("jet contraction")
                .put("contraction_coefficient", coefficient)
                .put("diameter", Kind.LENGTH, Kind.LENGTH.si(diameter))
                .put("speed", Kind.SPEED, Kind.SPEED.si(speed))
                .put("reynolds", reynolds)
                .put("weber", weber)
                .map();
    }

    @Override
    public String toString() {
        return "jet of " + QuantityText.forPeople(Kind.LENGTH, diameter);
    }
}
