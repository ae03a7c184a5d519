package dev.waterjet.hydraulics;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.measure.VolumeFlow;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Angle;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Frequency;
import javax.measure.quantity.Volume;

/**
 * Direct-drive pump: plungers on one crankshaft, evenly spaced in phase.
 *
 * <p>A plunger moves with the speed of a crank drive, <i>r</i> &omega; (sin &alpha; - (<i>r</i>/<i>l</i>)/2 sin 2&alpha;) from bottom dead
 * centre: the delivery stroke starts slowly. It delivers once it has compressed the water of stroke and dead volume to the
 * density of the outlet. Without compression the flow ripple, peak to peak, is 25 % of the mean for three plungers; at 380 MPa it
 * is 77 % without dead volume and 136 % with a dead volume of one stroke.
 */
public final class DirectDrivePump implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    /** Radius of the crank over length of the rod: common practice, no source. */
    private static final double TYPICAL_ROD_RATIO = 0.2;

    private static final int MAX_PLUNGERS = 24;
    private static final double MAX_DELAY_RAD = Math.PI / 4;

    /** Checked content, and the serial form. */
    private record Values(
            int plungers,
            double strokeVolumeM3,
            double turnsPerS,
            double volumetricEfficiency,
            double rodRatio,
            double deadVolumeRatio,
            double suctionClosesRad,
            double deliveryClosesRad)
            implements Serializable {

        private static final long serialVersionUID = 1L;

        Values {
            Require.between("number of plungers", plungers, 1, MAX_PLUNGERS, Units.ONE, "");
            strokeVolumeM3 = Require.positive("stroke volume", strokeVolumeM3, Units.LITRE);
            turnsPerS = Require.positive("speed of the crank", turnsPerS, Units.PER_MINUTE);
            Require.positive("volumetric efficiency", volumetricEfficiency, Units.ONE);
            volumetricEfficiency = Require.atMost("volumetric efficiency", volumetricEfficiency, 1, Units.ONE, "");
            rodRatio = Require.between("rod ratio", rodRatio, 0, 0.5, Units.ONE, "the rod must clear the crank");
            deadVolumeRatio = Require.between("dead volume over stroke volume", deadVolumeRatio, 0, 100, Units.ONE, "");
            suctionClosesRad = requireDelay("closing angle of the suction valve", suctionClosesRad);
            deliveryClosesRad = requireDelay("closing angle of the delivery valve", deliveryClosesRad);
        }

        private static double requireDelay(String name, double angleRad) {
            return Require.between(name, angleRad, 0, MAX_DELAY_RAD, Units.DEGREE, "after dead centre");
        }

        private Object readResolve() {
            return new DirectDrivePump(this);
        }

        CrankKernel kernel(double densityRatio) {
            double suctionClosed = CrankKernel.position(rodRatio, suctionClosesRad);
            double back = 1 - CrankKernel.position(rodRatio, Math.PI + deliveryClosesRad);
            double begin = CrankKernel.deliveryPosition(densityRatio, deadVolumeRatio, suctionClosed);
            if (!(1 - begin - back > 0)) {
                throw new DomainException(
                        Message.of(
                                "pump-delivers-nothing",
                                "{quantity} is {value}; it must be below {limit} (water in the dead volume takes up the"
                                        + " whole stroke when it is compressed)"),
                        "dead volume over stroke volume",
                        deadVolumeRatio,
                        Math.max(0, (1 - suctionClosed - densityRatio * back) / (densityRatio - 1)),
                        Units.ONE);
            }
            return new CrankKernel(plungers, rodRatio, begin, deliveryClosesRad);
        }

        double sweptM3PerS() {
            return plungers * strokeVolumeM3 * turnsPerS * volumetricEfficiency;
        }
    }

    private final transient Values values;

    private DirectDrivePump(Values values) {
        this.values = values;
    }

    /**
     * Returns a pump with a volumetric efficiency of 1, and rods five times as long as the radius of the crank.
     *
     * @param plungers number of plungers, 1 to 24
     * @param strokeVolume volume swept by one plunger in one stroke
     * @param speed turns of the crank per time
     * @return the pump
     */
    public static DirectDrivePump of(int plungers, Quantity<Volume> strokeVolume, Quantity<Frequency> speed) {
        Objects.requireNonNull(speed, "speed");
        Objects.requireNonNull(strokeVolume, "strokeVolume");
        return new DirectDrivePump(new Values(
                plungers, Kind.VOLUME.si(strokeVolume), Kind.FREQUENCY.si(speed), 1, TYPICAL_ROD_RATIO, 0, 0, 0));
    }

    /**
     * Returns this pump with a volumetric efficiency below 1, for leakage. Compression and re-expansion of the water are computed
     * where a compression is given.
     *
     * @param efficiency volume drawn at the intake over volume swept, above 0 to 1
     * @return the pump with that efficiency
     */
    public DirectDrivePump withVolumetricEfficiency(double efficiency) {
        return with(
                efficiency, values.rodRatio, values.deadVolumeRatio, values.suctionClosesRad, values.deliveryClosesRad);
    }

    /**
     * Returns this pump with other rods.
     *
     * @param ratio radius of the crank over length of the rod, 0 (infinitely long rods) to 0.5
     * @return the pump with those rods
     */
    public DirectDrivePump withRodRatio(double ratio) {
        return with(
                values.volumetricEfficiency,
                ratio,
                values.deadVolumeRatio,
                values.suctionClosesRad,
                values.deliveryClosesRad);
    }

    /**
     * Returns this pump with dead volume: water between plunger and valves at top dead centre, which is compressed and expands
     * again at every stroke.
     *
     * @param ratio dead volume over stroke volume, 0 or more; 0.3 to 1 (assumed)
     * @return the pump with that dead volume
     */
    public DirectDrivePump withDeadVolume(double ratio) {
        return with(
                values.volumetricEfficiency, values.rodRatio, ratio, values.suctionClosesRad, values.deliveryClosesRad);
    }

    /**
     * Returns this pump with valves that close late.
     *
     * @param suctionCloses angle after bottom dead centre at which the suction valve closes, 0 to 45 degrees
     * @param deliveryCloses angle after top dead centre at which the delivery valve closes, 0 to 45 degrees; water flows back
     *     until then
     * @return the pump with those valves
     */
    public DirectDrivePump withValveTiming(Quantity<Angle> suctionCloses, Quantity<Angle> deliveryCloses) {
        Objects.requireNonNull(deliveryCloses, "deliveryCloses");
        Objects.requireNonNull(suctionCloses, "suctionCloses");
        return with(
                values.volumetricEfficiency,
                values.rodRatio,
                values.deadVolumeRatio,
                Kind.ANGLE.si(suctionCloses),
                Kind.ANGLE.si(deliveryCloses));
    }

    private DirectDrivePump with(
            double efficiency, double rodRatio, double deadVolume, double suctionRad, double deliveryRad) {
        return new DirectDrivePump(new Values(
                values.plungers,
                values.strokeVolumeM3,
                values.turnsPerS,
                efficiency,
                rodRatio,
                deadVolume,
                suctionRad,
                deliveryRad));
    }

    /** {@return the number of plungers} */
    public int plungers() {
        return values.plungers;
    }

    /** {@return the turns of the crank per time} */
    public Quantity<Frequency> speed() {
        return Kind.FREQUENCY.of(values.turnsPerS);
    }

    /**
     * Returns the volume that all plungers deliver between two angles of the crank, for calculations over time.
     *
     * @param fromRad first angle in rad, from bottom dead centre of the first plunger; 0 or more
     * @param toRad second angle in rad, not below the first
     * @param densityRatio density at the outlet over density at the intake, 1 or more
     * @return the volume at the density of the outlet, in m<sup>3</sup>; 0 where compression takes up the whole stroke, negative
     *     while a delivery valve that closes late lets water back
     * @throws DomainException if an argument is out of range
     */
    public double deliveredVolumeSi(double fromRad, double toRad, double densityRatio) {
        Require.notNegative("angle of the crank", fromRad, Units.RADIAN);
        Require.atLeast("second angle of the crank", toRad, fromRad, Units.RADIAN, "the first");
        Require.atLeast("ratio of densities", densityRatio, 1, Units.ONE, "");
        double begin = CrankKernel.deliveryPosition(
                densityRatio, values.deadVolumeRatio, CrankKernel.position(values.rodRatio, values.suctionClosesRad));
        double end = Math.PI + values.deliveryClosesRad;
        double strokes = 0;
        for (int i = 0; i < values.plungers; i++) {
            double shift = 2 * Math.PI * i / values.plungers;
            strokes += CrankKernel.delivered(values.rodRatio, begin, end, toRad + shift)
                    - CrankKernel.delivered(values.rodRatio, begin, end, fromRad + shift);
        }
        return strokes * values.strokeVolumeM3 * values.volumetricEfficiency;
    }

    /** {@return the mean volume flow of incompressible water, at the density of the intake} */
    public Quantity<VolumeFlow> flow() {
        return Kind.VOLUME_FLOW.of(incompressibleM3PerS());
    }

    private double incompressibleM3PerS() {
        return values.sweptM3PerS() * values.kernel(1).net();
    }

    /**
     * Returns the mean volume flow of water that is compressed.
     *
     * @param compression compression of the water
     * @return the flow, at the density of the intake
     * @throws DomainException if the pump delivers nothing ({@code pump-delivers-nothing})
     */
    public Quantity<VolumeFlow> flow(Compression compression) {
        Objects.requireNonNull(compression, "compression");
        return Kind.VOLUME_FLOW.of(values.sweptM3PerS() * filled(compression));
    }

    /**
     * Returns the volumetric efficiency by compression and re-expansion of the water: 1 - &delta; (&rho;<sub>out</sub>/&rho;<sub>in</sub>
     * - 1) for valves that close at dead centre, with the dead volume &delta; in strokes. Leakage comes on top of it.
     *
     * @param compression compression of the water
     * @return volume drawn at the intake over volume swept
     * @throws DomainException as {@link #flow(Compression)}
     */
    public Quantity<Dimensionless> volumetricEfficiency(Compression compression) {
        Objects.requireNonNull(compression, "compression");
        return Kind.RATIO.of(filled(compression));
    }

    private double filled(Compression compression) {
        double ratio = densityRatio(compression);
        return ratio * values.kernel(ratio).net();
    }

    private static double densityRatio(Compression compression) {
        return compression.outlet().densitySi() / compression.inlet().densitySi();
    }

    /**
     * Returns the angle of the crank, from bottom dead centre, at which a plunger begins to deliver.
     *
     * @param compression compression of the water
     * @return the angle
     * @throws DomainException as {@link #flow(Compression)}
     */
    public Quantity<Angle> deliveryAngle(Compression compression) {
        Objects.requireNonNull(compression, "compression");
        return Kind.ANGLE.of(values.kernel(densityRatio(compression)).deliveryRad());
    }

    /** {@return the flow ripple of incompressible water, peak to peak, over the mean flow} */
    public Quantity<Dimensionless> flowRipple() {
        return Kind.RATIO.of(values.kernel(1).ripple());
    }

    /**
     * Returns the flow ripple of water that is compressed.
     *
     * @param compression compression of the water
     * @return the flow ripple, peak to peak, over the mean flow
     * @throws DomainException as {@link #flow(Compression)}
     */
    public Quantity<Dimensionless> flowRipple(Compression compression) {
        Objects.requireNonNull(compression, "compression");
        return Kind.RATIO.of(values.kernel(densityRatio(compression)).ripple());
    }

    /**
     * Returns the volume that the head draws from an attenuator while the flow of compressed water is below its mean.
     *
     * @param compression compression of the water
     * @return the volume, at the density of the outlet
     * @throws DomainException as {@link #flow(Compression)}
     */
    public Quantity<Volume> fluctuatingVolume(Compression compression) {
        Objects.requireNonNull(compression, "compression");
        CrankKernel kernel = values.kernel(densityRatio(compression));
        return Kind.VOLUME.of(values.sweptM3PerS() / values.turnsPerS * kernel.net() * kernel.fluctuation());
    }

    /**
     * {@return the volume of incompressible water that the head draws from an attenuator while the flow is below its mean}
     */
    public Quantity<Volume> fluctuatingVolume() {
        return Kind.VOLUME.of(
                incompressibleM3PerS() / values.turnsPerS * values.kernel(1).fluctuation());
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("direct-drive pump")
                .put("plungers", values.plungers)
                .put("stroke_volume", Kind.VOLUME, values.strokeVolumeM3)
                .put("speed", Kind.FREQUENCY, values.turnsPerS)
                .put("volumetric_efficiency", values.volumetricEfficiency)
                .put("rod_ratio", values.rodRatio)
                .put("dead_volume_ratio", values.deadVolumeRatio)
                .put("suction_closes", Kind.ANGLE, values.suctionClosesRad)
                .put("delivery_closes", Kind.ANGLE, values.deliveryClosesRad)
                .put("flow", Kind.VOLUME_FLOW, incompressibleM3PerS())
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof DirectDrivePump that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return "direct-drive pump of " + values.plungers + " plungers, "
                + QuantityText.forPeople(Kind.VOLUME_FLOW, flow());
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
