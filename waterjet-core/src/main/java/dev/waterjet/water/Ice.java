package dev.waterjet.water;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import javax.measure.Quantity;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Temperature;

/**
 * The ices that border on liquid water, each with its melting line by IAPWS R14-08(2011).
 *
 * <p>Ice Ih, the ice of ponds, melts under pressure, down to -22 C at 209 MPa. All others are denser than water: pressure
 * makes them. At 20 C it is ice VI, from about 890 MPa.
 */
public enum Ice {
    /** The ice of ponds: up to 208.566 MPa, 251.165 to 273.16 K. */
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

    private final String words;
    private final double lowestK;
    private final double highestK;

    Ice(String words, double lowestK, double highestK) {
        this.words = words;
        this.lowestK = lowestK;
        this.highestK = highestK;
    }

    abstract double pressurePa(double temperatureK);

    /**
     * Pressure at which this ice and liquid water are in balance.
     *
     * @param temperature temperature within the line of this ice
     * @return absolute pressure, in Pa
     * @throws dev.waterjet.measure.DomainException if the line does not reach that temperature
     */
    public Quantity<Pressure> meltingPressure(Quantity<Temperature> temperature) {
        double temperatureK = Require.between(
                "temperature",
                Kind.TEMPERATURE.si(temperature),
                lowestK,
                highestK,
                Units.KELVIN,
                "the melting line of " + words + " ends there");
        return Kind.PRESSURE.of(pressurePa(temperatureK));
    }

    /**
     * Temperature at which liquid water freezes.
     *
     * @param pressure absolute pressure, 611.657 Pa to 2216 MPa
     * @return the temperature, in K
     * @throws dev.waterjet.measure.DomainException if the pressure is out of that range
     */
    public static Quantity<Temperature> meltingTemperature(Quantity<Pressure> pressure) {
        return Kind.TEMPERATURE.of(MeltingKernel.temperatureK(inRange(pressure)));
    }

    /**
     * The ice that liquid water freezes to.
     *
     * @param pressure absolute pressure, 611.657 Pa to 2216 MPa
     * @return the ice; where two lines meet, the one of lower pressure
     * @throws dev.waterjet.measure.DomainException if the pressure is out of that range
     */
    public static Ice at(Quantity<Pressure> pressure) {
        return at(inRange(pressure));
    }

    private static double inRange(Quantity<Pressure> pressure) {
        return Require.between(
                "pressure",
                Kind.PRESSURE.si(pressure),
                MeltingKernel.TRIPLE_PRESSURE_PA,
                MeltingKernel.VI_VII_PA,
                Units.MEGAPASCAL,
                "from the triple point of ice Ih to the end of ice VI");
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
        return words;
    }
}
