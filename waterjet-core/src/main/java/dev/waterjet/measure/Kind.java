package dev.waterjet.measure;

import java.io.InvalidObjectException;
import java.io.ObjectStreamException;
import java.io.Serializable;
import java.util.List;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Acceleration;
import javax.measure.quantity.Angle;
import javax.measure.quantity.Area;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Energy;
import javax.measure.quantity.Force;
import javax.measure.quantity.Frequency;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Power;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Speed;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Time;
import javax.measure.quantity.Volume;
import tech.units.indriya.AbstractUnit;
import tech.units.indriya.quantity.Quantities;

/**
 * A kind of quantity: the one place where a {@link Quantity} becomes a double in SI units, and a double becomes a
 * {@code Quantity} again.
 *
 * <p>A kind has a coherent SI unit and refuses a unit of another dimension, even behind an unchecked cast. Everything behind
 * this boundary runs on plain SI doubles. Quantities may come from any implementation of JSR-385: units of another
 * implementation are compared by the symbols of their base units.
 *
 * <p>Dimensions are all that a unit shows. Kinds of one dimension cannot be distinguished behind an unchecked cast: pressure and
 * energy density, ratio and angle, frequency and radioactivity.
 *
 * <p>Constants of this class are the only instances. Pressures say in their own documentation whether they are gauge
 * or absolute; temperatures are absolute in kelvin.
 *
 * @param <Q> the JSR-385 quantity type
 */
public final class Kind<Q extends Quantity<Q>> implements Serializable {

    private static final long serialVersionUID = 1L;

    /** Length, in m. */
    public static final Kind<Length> LENGTH = new Kind<>("length", Length.class, SiUnits.METRE);

    /** Area, in m2. */
    public static final Kind<Area> AREA = new Kind<>("area", Area.class, SiUnits.SQUARE_METRE);

    /** Volume, in m3. */
    public static final Kind<Volume> VOLUME = new Kind<>("volume", Volume.class, SiUnits.CUBIC_METRE);

    /** Time, in s. */
    public static final Kind<Time> TIME = new Kind<>("time", Time.class, SiUnits.SECOND);

    /** Frequency, in 1/s. */
    public static final Kind<Frequency> FREQUENCY = new Kind<>("frequency", Frequency.class, SiUnits.HERTZ);

    /** Speed, in m/s. */
    public static final Kind<Speed> SPEED = new Kind<>("speed", Speed.class, SiUnits.METRE_PER_SECOND);

    /** Acceleration, in m/s2. */
    public static final Kind<Acceleration> ACCELERATION =
            new Kind<>("acceleration", Acceleration.class, SiUnits.METRE_PER_SQUARE_SECOND);

    /** Jerk, in m/s3. */
    public static final Kind<Jerk> JERK = new Kind<>("jerk", Jerk.class, SiUnits.per(SiUnits.METRE_PER_SQUARE_SECOND, SiUnits.SECOND));

    /** Plane angle, in rad. */
    public static final Kind<Angle> ANGLE = new Kind<>("angle", Angle.class, SiUnits.RADIAN);

    /** Mass, in kg. */
    public static final Kind<Mass> MASS = new Kind<>("mass", Mass.class, SiUnits.KILOGRAM);

    /** Force, in N. */
    public static final Kind<Force> FORCE = new Kind<>("force", Force.class, SiUnits.NEWTON);

    /** Pressure or stress, in Pa. */
    public static final Kind<Pressure> PRESSURE = new Kind<>("pressure", Pressure.class, SiUnits.PASCAL);

    /** Absolute temperature, in K. */
    public static final Kind<Temperature> TEMPERATURE = new Kind<>("temperature", Temperature.class, SiUnits.KELVIN);

    /** Power, in W. */
    public static final Kind<Power> POWER = new Kind<>("power", Power.class, SiUnits.WATT);

    /** Energy, in J. */
    public static final Kind<Energy> ENERGY = new Kind<>("energy", Energy.class, SiUnits.JOULE);

    /** Mass flow, in kg/s. */
    public static final Kind<MassFlow> MASS_FLOW = new Kind<>("mass flow", MassFlow.class, SiUnits.per(SiUnits.KILOGRAM, SiUnits.SECOND));

    /** Volume flow, in m3/s. */
    public static final Kind<VolumeFlow> VOLUME_FLOW =
            new Kind<>("volume flow", VolumeFlow.class, SiUnits.per(SiUnits.CUBIC_METRE, SiUnits.SECOND));

    /** Density, in kg/m3. */
    public static final Kind<Density> DENSITY = new Kind<>("density", Density.class, SiUnits.per(SiUnits.KILOGRAM, SiUnits.CUBIC_METRE));

    /** Dynamic viscosity, in Pa s. */
    public static final Kind<DynamicViscosity> DYNAMIC_VISCOSITY =
            new Kind<>("dynamic viscosity", DynamicViscosity.class, SiUnits.PASCAL.multiply(SiUnits.SECOND));

    /** Energy per mass, in J/kg. */
    public static final Kind<SpecificEnergy> SPECIFIC_ENERGY =
            new Kind<>("specific energy", SpecificEnergy.class, SiUnits.per(SiUnits.JOULE, SiUnits.KILOGRAM));

    /** Heat capacity or entropy per mass, in J/(kg K). */
    public static final Kind<SpecificHeat> SPECIFIC_HEAT =
            new Kind<>("specific heat", SpecificHeat.class, SiUnits.per(SiUnits.per(SiUnits.JOULE, SiUnits.KILOGRAM), SiUnits.KELVIN));

    /** Energy per volume, in J/m3. */
    public static final Kind<EnergyDensity> ENERGY_DENSITY =
            new Kind<>("energy density", EnergyDensity.class, SiUnits.per(SiUnits.JOULE, SiUnits.CUBIC_METRE));

    /** Compressibility, in 1/Pa. */
    public static final Kind<Compressibility> COMPRESSIBILITY =
            new Kind<>("compressibility", Compressibility.class, SiUnits.PASCAL.inverse());

    /** Thermal expansion, in 1/K. */
    public static final Kind<ThermalExpansion> THERMAL_EXPANSION =
            new Kind<>("thermal expansion", ThermalExpansion.class, SiUnits.KELVIN.inverse());

    /** Ratio of two quantities of one kind, without unit. */
    public static final Kind<Dimensionless> RATIO = new Kind<>("ratio", Dimensionless.class, AbstractUnit.ONE);

    private static final List<Kind<?>> ALL = List.of(
            LENGTH,
            AREA,
            VOLUME,
            TIME,
            FREQUENCY,
            SPEED,
            ACCELERATION,
            JERK,
            ANGLE,
            MASS,
            FORCE,
            PRESSURE,
            TEMPERATURE,
            POWER,
            ENERGY,
            MASS_FLOW,
            VOLUME_FLOW,
            DENSITY,
            DYNAMIC_VISCOSITY,
            SPECIFIC_ENERGY,
            SPECIFIC_HEAT,
            ENERGY_DENSITY,
            COMPRESSIBILITY,
            THERMAL_EXPANSION,
            RATIO);

    private final String name;
    private final transient Class<Q> type;
    private final transient Unit<Q> siUnit;

    /** The unit is of this type by the table above; a check by the unit library would build all its units. */
    @SuppressWarnings("unchecked")
    private Kind(String name, Class<Q> type, Unit<?> siUnit) {
        this.name = name;
        this.type = type;
        this.siUnit = (Unit<Q>) siUnit;
    }

    /**
     * All kinds, in a fixed order.
     *
     * @return an unmodifiable list
     */
    public static List<Kind<?>> all() {
        return ALL;
    }

    /**
     * Name in plain words, such as {@code "mass flow"}.
     *
     * @return the name
     */
    public String name() {
        return name;
    }

    /**
     * The JSR-385 type of this kind.
     *
     * @return the quantity interface
     */
    public Class<Q> type() {
        return type;
    }

    /**
     * The coherent SI unit of this kind.
     *
     * @return the unit
     */
    public Unit<Q> siUnit() {
        return siUnit;
    }

    /**
     * Value of a quantity in the SI unit of this kind.
     *
     * @param quantity the quantity
     * @return its value in SI
     * @throws DomainException with code {@code wrong-kind} if the quantity's unit is of another dimension, with code
     *     {@code temperature-difference} if it is a difference of temperatures (JSR-385 scale {@code RELATIVE})
     */
    public double si(Quantity<Q> quantity) {
        Objects.requireNonNull(quantity, "quantity");
        if (type == Temperature.class && quantity.getScale() == Quantity.Scale.RELATIVE) {
            throw new DomainException(
                    Message.of(
                                    "temperature-difference",
                                    "{difference} is a difference of temperatures; an absolute temperature is required")
                            .with("difference", QuantityText.print(quantity)),
                    name);
        }
        return Scale.of(this, quantity.getUnit()).toSi(quantity.getValue().doubleValue());
    }

    /**
     * A quantity from a value in the SI unit of this kind.
     *
     * @param si value in SI
     * @return the quantity, in the SI unit
     * @throws DomainException if the value is not finite
     */
    public Quantity<Q> of(double si) {
        return number(si, siUnit);
    }

    /**
     * A quantity from a value in SI, expressed in another unit.
     *
     * @param si value in SI
     * @param unit unit of the result
     * @return the quantity, in the unit asked for
     * @throws DomainException with code {@code wrong-kind} if the unit is of another dimension
     * @throws DomainException if the value is not finite
     */
    public Quantity<Q> of(double si, Unit<Q> unit) {
        Objects.requireNonNull(unit, "unit");
        return number(Scale.of(this, unit).fromSi(si), unit);
    }

    /** A quantity from a number of a unit of this kind. */
    Quantity<Q> number(double number, Unit<Q> unit) {
        if (!Double.isFinite(number)) {
            throw Require.infinite(name, Scale.of(this, unit).toSi(number), unit);
        }
        return Quantities.getQuantity(number, unit);
    }

    /**
     * Reads a quantity of this kind from text such as {@code "380 MPa"}; see {@link QuantityText}.
     *
     * @param text number and unit
     * @return the quantity, in the unit written
     * @throws TextException if the text is not a number with a unit of this kind
     */
    public Quantity<Q> parse(String text) {
        return QuantityText.parse(this, text);
    }

    /**
     * Heading of a column that holds values of this kind in SI, such as {@code "pressure_Pa"}.
     *
     * @param label what the column holds, in lower case with underscores
     * @return label and SI unit; the label alone for a ratio
     */
    public String column(String label) {
        Objects.requireNonNull(label, "label");
        String suffix = Units.columnSuffix(siUnit);
        return suffix.isEmpty() ? label : label + "_" + suffix;
    }

    /** The same in every run, unlike that of an object. */
    @Override
    public int hashCode() {
        return name.hashCode();
    }

    @Override
    public boolean equals(Object other) {
        return this == other;
    }

    @Override
    public String toString() {
        return name;
    }

    private Object readResolve() throws ObjectStreamException {
        for (Kind<?> kind : ALL) {
            if (kind.name.equals(name)) {
                return kind;
            }
        }
        throw new InvalidObjectException("no kind of quantity is called " + Objects.toString(name));
    }
}
