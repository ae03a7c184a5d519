package dev.waterjet.measure;

import java.io.InvalidObjectException;
import java.io.ObjectStreamException;
import java.io.Serializable;
import java.util.List;
import java.util.Map;
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
 * Kind of quantity: the one place where a {@link Quantity} becomes a double in SI units, and a double becomes a
 * {@code Quantity} again.
 *
 * <pre>{@code
 * double pa = Kind.PRESSURE.si(megapascals(380));           // 3.8e8
 * Quantity<Pressure> pressure = Kind.PRESSURE.of(pa, Units.KSI);
 * Kind.PRESSURE.parse("55 ksi");
 * }</pre>
 *
 * <p>A kind has a coherent SI unit and refuses a unit of another dimension, even behind an unchecked cast. Everything behind
 * this boundary runs on plain SI doubles. Quantities may come from any implementation of JSR-385: units of another
 * implementation are compared by the symbols of their base units.
 *
 * <p>Dimensions are all that a unit shows. Kinds of one dimension cannot be distinguished behind an unchecked cast: pressure and
 * energy density, ratio and angle, frequency and radioactivity.
 *
 * <p>Constants of this class are the only instances. Whether a pressure is gauge or absolute is stated where it
 * is used; temperatures are absolute, in kelvin.
 *
 * @param <Q> the JSR-385 quantity type
 */
public final class Kind<Q extends Quantity<Q>> implements Serializable {

    private static final long serialVersionUID = 1L;

    /** Length, in m. */
    public static final Kind<Length> LENGTH = new Kind<>("length", SiUnits.METRE);

    /** Area, in m2. */
    public static final Kind<Area> AREA = new Kind<>("area", SiUnits.SQUARE_METRE);

    /** Volume, in m3. */
    public static final Kind<Volume> VOLUME = new Kind<>("volume", SiUnits.CUBIC_METRE);

    /** Time, in s. */
    public static final Kind<Time> TIME = new Kind<>("time", SiUnits.SECOND);

    /** Frequency, in 1/s. */
    public static final Kind<Frequency> FREQUENCY = new Kind<>("frequency", SiUnits.HERTZ);

    /** Speed, in m/s. */
    public static final Kind<Speed> SPEED = new Kind<>("speed", SiUnits.METRE_PER_SECOND);

    /** Acceleration, in m/s2. */
    public static final Kind<Acceleration> ACCELERATION = new Kind<>("acceleration", SiUnits.METRE_PER_SQUARE_SECOND);

    /** Jerk, in m/s3. */
    public static final Kind<Jerk> JERK =
            new Kind<>("jerk", SiUnits.per(SiUnits.METRE_PER_SQUARE_SECOND, SiUnits.SECOND));

    /** Plane angle, in rad. */
    public static final Kind<Angle> ANGLE = new Kind<>("angle", SiUnits.RADIAN);

    /** Angular speed, in rad/s. */
    public static final Kind<AngularSpeed> ANGULAR_SPEED =
            new Kind<>("angular speed", SiUnits.per(SiUnits.RADIAN, SiUnits.SECOND));

    /** Angular acceleration, in rad/s2. */
    public static final Kind<AngularAcceleration> ANGULAR_ACCELERATION = new Kind<>(
            "angular acceleration", SiUnits.per(SiUnits.per(SiUnits.RADIAN, SiUnits.SECOND), SiUnits.SECOND));

    /** Mass, in kg. */
    public static final Kind<Mass> MASS = new Kind<>("mass", SiUnits.KILOGRAM);

    /** Force, in N. */
    public static final Kind<Force> FORCE = new Kind<>("force", SiUnits.NEWTON);

    /** Pressure or stress, in Pa. */
    public static final Kind<Pressure> PRESSURE = new Kind<>("pressure", SiUnits.PASCAL);

    /** Absolute temperature, in K. */
    public static final Kind<Temperature> TEMPERATURE = new Kind<>("temperature", SiUnits.KELVIN);

    /** Power, in W. */
    public static final Kind<Power> POWER = new Kind<>("power", SiUnits.WATT);

    /** Energy, in J. */
    public static final Kind<Energy> ENERGY = new Kind<>("energy", SiUnits.JOULE);

    /** Mass flow, in kg/s. */
    public static final Kind<MassFlow> MASS_FLOW =
            new Kind<>("mass flow", SiUnits.per(SiUnits.KILOGRAM, SiUnits.SECOND));

    /** Volume flow, in m3/s. */
    public static final Kind<VolumeFlow> VOLUME_FLOW =
            new Kind<>("volume flow", SiUnits.per(SiUnits.CUBIC_METRE, SiUnits.SECOND));

    /** Density, in kg/m3. */
    public static final Kind<Density> DENSITY =
            new Kind<>("density", SiUnits.per(SiUnits.KILOGRAM, SiUnits.CUBIC_METRE));

    /** Dynamic viscosity, in Pa s. */
    public static final Kind<DynamicViscosity> DYNAMIC_VISCOSITY =
            new Kind<>("dynamic viscosity", SiUnits.PASCAL.multiply(SiUnits.SECOND));

    /** Energy per mass, in J/kg. */
    public static final Kind<SpecificEnergy> SPECIFIC_ENERGY =
            new Kind<>("specific energy", SiUnits.per(SiUnits.JOULE, SiUnits.KILOGRAM));

    /** Heat capacity or entropy per mass, in J/(kg K). */
    public static final Kind<SpecificHeat> SPECIFIC_HEAT =
            new Kind<>("specific heat", SiUnits.per(SiUnits.per(SiUnits.JOULE, SiUnits.KILOGRAM), SiUnits.KELVIN));

    /** Energy per volume, in J/m3. */
    public static final Kind<EnergyDensity> ENERGY_DENSITY =
            new Kind<>("energy density", SiUnits.per(SiUnits.JOULE, SiUnits.CUBIC_METRE));

    /** Compressibility, in 1/Pa. */
    public static final Kind<Compressibility> COMPRESSIBILITY = new Kind<>("compressibility", SiUnits.PASCAL.inverse());

    /** Thermal expansion, in 1/K. */
    public static final Kind<ThermalExpansion> THERMAL_EXPANSION =
            new Kind<>("thermal expansion", SiUnits.KELVIN.inverse());

    /** Surface tension, in N/m. */
    public static final Kind<SurfaceTension> SURFACE_TENSION =
            new Kind<>("surface tension", SiUnits.per(SiUnits.NEWTON, SiUnits.METRE));

    /** Ratio of two quantities of one kind, without unit. */
    public static final Kind<Dimensionless> RATIO = new Kind<>("ratio", AbstractUnit.ONE);

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
            ANGULAR_SPEED,
            ANGULAR_ACCELERATION,
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
            SURFACE_TENSION,
            RATIO);

    private final String name;
    private final transient Unit<Q> siUnit;

    /** The unit is of this type by the table above; a check by the unit library would build all its units. */
    @SuppressWarnings("unchecked")
    private Kind(String name, Unit<?> siUnit) {
        this.name = name;
        this.siUnit = (Unit<Q>) siUnit;
    }

    /** {@return all kinds, in a fixed order, unmodifiable} */
    public static List<Kind<?>> all() {
        return ALL;
    }

    /** {@return the name, such as {@code "mass flow"}} */
    public String name() {
        return name;
    }

    /** {@return the JSR-385 type of this kind} */
    @SuppressWarnings("unchecked")
    public Class<Q> type() {
        return (Class<Q>) Objects.requireNonNull(Types.OF_KIND.get(this));
    }

    /** Loaded only where a type is requested: a first quantity needs none of these classes. */
    private static final class Types {
        private static final Map<Kind<?>, Class<?>> OF_KIND = Map.ofEntries(
                Map.entry(LENGTH, Length.class),
                Map.entry(AREA, Area.class),
                Map.entry(VOLUME, Volume.class),
                Map.entry(TIME, Time.class),
                Map.entry(FREQUENCY, Frequency.class),
                Map.entry(SPEED, Speed.class),
                Map.entry(ACCELERATION, Acceleration.class),
                Map.entry(JERK, Jerk.class),
                Map.entry(ANGLE, Angle.class),
                Map.entry(ANGULAR_SPEED, AngularSpeed.class),
                Map.entry(ANGULAR_ACCELERATION, AngularAcceleration.class),
                Map.entry(MASS, Mass.class),
                Map.entry(FORCE, Force.class),
                Map.entry(PRESSURE, Pressure.class),
                Map.entry(TEMPERATURE, Temperature.class),
                Map.entry(POWER, Power.class),
                Map.entry(ENERGY, Energy.class),
                Map.entry(MASS_FLOW, MassFlow.class),
                Map.entry(VOLUME_FLOW, VolumeFlow.class),
                Map.entry(DENSITY, Density.class),
                Map.entry(DYNAMIC_VISCOSITY, DynamicViscosity.class),
                Map.entry(SPECIFIC_ENERGY, SpecificEnergy.class),
                Map.entry(SPECIFIC_HEAT, SpecificHeat.class),
                Map.entry(ENERGY_DENSITY, EnergyDensity.class),
                Map.entry(COMPRESSIBILITY, Compressibility.class),
                Map.entry(THERMAL_EXPANSION, ThermalExpansion.class),
                Map.entry(SURFACE_TENSION, SurfaceTension.class),
                Map.entry(RATIO, Dimensionless.class));
    }

    /** {@return the coherent SI unit of this kind} */
    public Unit<Q> siUnit() {
        return siUnit;
    }

    /**
     * Returns the value of a quantity in the SI unit of this kind.
     *
     * @param quantity the quantity
     * @return its value in SI
     * @throws DomainException with code {@code wrong-kind} if the quantity's unit is of another dimension, with code
     *     {@code temperature-difference} if it is a difference of temperatures (JSR-385 scale {@code RELATIVE})
     */
    public double si(Quantity<Q> quantity) {
        Objects.requireNonNull(quantity, "quantity");
        if (TEMPERATURE.equals(this) && quantity.getScale() == Quantity.Scale.RELATIVE) {
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
     * Returns a quantity from a value in the SI unit of this kind.
     *
     * @param si value in SI
     * @return the quantity, in the SI unit
     * @throws DomainException if the value is not finite
     */
    public Quantity<Q> of(double si) {
        return number(si, siUnit);
    }

    /**
     * Returns a quantity from a value in SI, expressed in another unit.
     *
     * @param si value in SI
     * @param unit unit of the result
     * @return the quantity, in the requested unit
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
     * Returns the heading of a column of values of this kind in SI, such as {@code "pressure_Pa"}.
     *
     * @param label content of the column, in lower case with underscores
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
