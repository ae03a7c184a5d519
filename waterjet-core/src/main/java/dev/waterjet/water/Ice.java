package dev.waterjet.water;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Temperature;

/**
 * Forms of ice in equilibrium with liquid water, each with its melting line by IAPWS R14-08(2011).
 *
 * <p>The melting temperature of ice Ih, the ordinary ice, falls with pressure to −22 °C at 209 MPa. All other forms are
 * denser than water, and their melting temperature rises with pressure. At 20 °C water freezes to ice VI from about 890 MPa.
 */
public enum Ice {
    /** Ice Ih, ordinary ice: up to 208.566 MPa, 251.165 to 273.16 K. */
    IH("ice Ih", MeltingKernel.IH_III_K, MeltingKernel.TRIPLE_K) {
        @Override
        double pressurePa(double temperatureK) {
            return MeltingKernel.pressureIhPa(temperatureK);
        }
    },

    /** Ice III: 208.566 to 350.1 MPa, 251.165 to 256.164 K. */
    III("ice III", MeltingKernel.IH_III_K, MeltingKernel.III_V_K) {
        @Override
        double pressurePa(double temperatureK) {
            return MeltingKernel.pressureIiiPa(temperatureK);
        }
    },

    /** Ice V: 350.1 to 632.4 MPa, 256.164 to 273.31 K. */
    V("ice V", MeltingKernel.III_V_K, MeltingKernel.V_VI_K) {
        @Override
        double pressurePa(double temperatureK) {
            return MeltingKernel.pressureVPa(temperatureK);
        }
    },

    /** Ice VI: 632.4 to 2216 MPa, 273.31 to 355 K. */
    VI("ice VI", MeltingKernel.V_VI_K, MeltingKernel.VI_VII_K) {
        @Override
        double pressurePa(double temperatureK) {
            return MeltingKernel.pressureViPa(temperatureK);
        }
    },

    /** Ice VII: above 2216 MPa, 355 to 715 K. */
    VII("ice VII", MeltingKernel.VI_VII_K, MeltingKernel.LAST_VII_K) {
        @Override
        double pressurePa(double temperatureK) {
            return MeltingKernel.pressureViiPa(temperatureK);
        }
    };

    private final String label;
    private final double minimumK;
    private final double maximumK;

    Ice(String label, double minimumK, double maximumK) {
        this.label = label;
        this.minimumK = minimumK;
        this.maximumK = maximumK;
    }

    abstract double pressurePa(double temperatureK);

    /** {@return the name for people, such as {@code ice VI}} */
    public String label() {
        return label;
    }

    /**
     * Returns the pressure at which this ice and liquid water are in equilibrium.
     *
     * @param temperature temperature on the melting line of this ice
     * @return absolute pressure
     * @throws dev.waterjet.measure.DomainException if the melting line does not reach that temperature
     */
    public Quantity<Pressure> meltingPressure(Quantity<Temperature> temperature) {
        double temperatureK = Require.between(
                "melting temperature",
                Kind.TEMPERATURE.si(temperature),
                minimumK,
                maximumK,
                Units.KELVIN,
                "end of the melting line of " + label);
        return Kind.PRESSURE.of(pressurePa(temperatureK));
    }

    /**
     * Returns the temperature at which liquid water freezes.
     *
     * @param pressure absolute pressure, 611.657 Pa to 2216 MPa
     * @return the melting temperature
     * @throws dev.waterjet.measure.DomainException if the pressure is out of that range
     */
    public static Quantity<Temperature> meltingTemperature(Quantity<Pressure> pressure) {
        Objects.requireNonNull(pressure, "pressure");
        return Kind.TEMPERATURE.of(MeltingKernel.temperatureK(inRange(pressure)));
    }

    /**
     * Returns the form of ice to which liquid water freezes.
     *
     * @param pressure absolute pressure, 611.657 Pa to 2216 MPa
     * @return the ice; where two lines meet, the one of lower pressure
     * @throws dev.waterjet.measure.DomainException if the pressure is out of that range
     */
    public static Ice at(Quantity<Pressure> pressure) {
        Objects.requireNonNull(pressure, "pressure");
        return at(inRange(pressure));
    }

    private static double inRange(Quantity<Pressure> pressure) {
        return Require.between(
                "melting pressure",
                Kind.PRESSURE.si(pressure),
                MeltingKernel.TRIPLE_PRESSURE_PA,
                MeltingKernel.VI_VII_PA,
                Units.MEGAPASCAL,
                "triple point of ice Ih to end of ice VI");
    }

    static Ice at(double pressurePa) {
        if (pressurePa <= MeltingKernel.IH_III_PA) {
            return IH;
        }
        if (pressurePa <= MeltingKernel.III_V_PA) {
            return III;
        }
        return pressurePa <= MeltingKernel.V_VI_PA ? V : VI;
    }

    @Override
    public String toString() {
        return label;
    }
}
