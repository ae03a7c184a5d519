package dev.waterjet.hydraulics;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.vessel.Ends;
import dev.waterjet.vessel.ThickTube;
import dev.waterjet.water.WaterState;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.Map;
import javax.measure.Quantity;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Volume;

/**
 * Attenuator: thick-walled vessel that reduces the pressure ripple of a pump by the compressibility of the water in it.
 *
 * <p>d<i>p</i>/d<i>t</i> = <i>K</i> (<i>m</i><sub>in</sub> - <i>m</i><sub>out</sub>)/(&rho; <i>V</i>), with the adiabatic bulk
 * modulus <i>K</i> = &rho; <i>w</i><sup>2</sup> of the water. An elastic wall reduces it:
 * 1/<i>K</i><sub>eff</sub> = 1/<i>K</i> + (2/<i>E</i>) ((<i>D</i><sub>o</sub><sup>2</sup> +
 * <i>D</i><sub>i</sub><sup>2</sup>)/(<i>D</i><sub>o</sub><sup>2</sup> - <i>D</i><sub>i</sub><sup>2</sup>) + &nu;).
 */
public final class Attenuator implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    /** Checked content, and the serial form. */
    private record Values(double volumeM3, double wallCompliancePerPa) implements Serializable {

        private static final long serialVersionUID = 1L;

        Values {
            volumeM3 = Require.positive("volume of the attenuator", volumeM3, Units.LITRE);
            wallCompliancePerPa =
                    Require.notNegative("compliance of the wall", wallCompliancePerPa, Kind.COMPRESSIBILITY.siUnit());
        }

        private Object readResolve() {
            return new Attenuator(this);
        }
    }

    private final transient Values values;

    private Attenuator(Values values) {
        this.values = values;
    }

    /**
     * Returns a vessel with a rigid wall.
     *
     * @param volume volume of water in it, above 0
     * @return the attenuator
     */
    public static Attenuator of(Quantity<Volume> volume) {
        return new Attenuator(new Values(Kind.VOLUME.si(volume), 0));
    }

    /**
     * Returns this vessel as a tube with an elastic wall. Its closed ends are not considered.
     *
     * @param ratio outer over inner diameter, above 1
     * @param youngsModulus modulus of elasticity of the wall; about 200 GPa for steel (value from memory)
     * @param poissonsRatio Poisson's ratio of the wall, 0 to 0.5; about 0.29 for steel (value from memory)
     * @return the attenuator with that wall
     */
    public Attenuator withDiameterRatio(double ratio, Quantity<Pressure> youngsModulus, double poissonsRatio) {
        Require.above("diameter ratio of the attenuator", ratio, 1, Units.ONE, "");
        ThickTube wall =
                ThickTube.of(Kind.LENGTH.of(1), Kind.LENGTH.of(ratio)).withElasticity(youngsModulus, poissonsRatio);
        return withWall(wall, Ends.OPEN);
    }

    /**
     * Returns this vessel with the elastic wall of a tube.
     *
     * @param wall the tube; its bore is not used
     * @param ends ends of the tube
     * @return the attenuator with that wall
     */
    public Attenuator withWall(ThickTube wall, Ends ends) {
        return new Attenuator(new Values(values.volumeM3, Kind.COMPRESSIBILITY.si(wall.compliance(ends))));
    }

    /**
     * Returns this vessel with another volume and the same wall.
     *
     * @param volume volume of water in it, above 0
     * @return the attenuator of that volume
     */
    public Attenuator withVolume(Quantity<Volume> volume) {
        return new Attenuator(new Values(Kind.VOLUME.si(volume), values.wallCompliancePerPa));
    }

    /**
     * {@return the volume of water in the vessel}
     */
    public Quantity<Volume> volume() {
        return Kind.VOLUME.of(values.volumeM3);
    }

    /**
     * Returns the bulk modulus of water and wall together.
     *
     * @param water water at the mean pressure in the vessel
     * @return the effective bulk modulus
     */
    public Quantity<Pressure> effectiveBulkModulus(WaterState water) {
        return Kind.PRESSURE.of(modulusPa(water));
    }

    private double modulusPa(WaterState water) {
        double waterPa = water.densitySi() * water.soundSpeedSi() * water.soundSpeedSi();
        return 1 / (1 / waterPa + values.wallCompliancePerPa);
    }

    /**
     * Returns the pressure ripple, peak to peak, while the head draws a volume that the pump does not deliver. The bulk modulus
     * is taken as constant, which overestimates the ripple: by 3 % if 1 % of the vessel is drawn, by 7 % for 2 %.
     *
     * @param drawn volume drawn at the density in the vessel, at most a tenth of the vessel
     * @param water water at the mean pressure in the vessel
     * @return the pressure ripple, peak to peak
     * @throws dev.waterjet.measure.DomainException if the volume is negative or above a tenth of the vessel
     */
    public Quantity<Pressure> ripple(Quantity<Volume> drawn, WaterState water) {
        double drawnM3 = Require.between(
                "volume drawn",
                Kind.VOLUME.si(drawn),
                0,
                values.volumeM3 / 10,
                Units.CUBIC_MILLIMETRE,
                "a tenth of the attenuator");
        return Kind.PRESSURE.of(modulusPa(water) * drawnM3 / values.volumeM3);
    }

    /**
     * Returns this vessel in the volume that a pressure ripple requires.
     *
     * @param drawn volume drawn that the pump does not deliver, at the density in the vessel
     * @param ripple pressure ripple required, peak to peak, above 0
     * @param water water at the mean pressure in the vessel
     * @return the attenuator with that ripple
     */
    public Attenuator forRipple(Quantity<Volume> drawn, Quantity<Pressure> ripple, WaterState water) {
        double drawnM3 = Require.positive("volume drawn", Kind.VOLUME.si(drawn), Units.CUBIC_MILLIMETRE);
        double ripplePa = Require.positive("pressure ripple", Kind.PRESSURE.si(ripple), Units.MEGAPASCAL);
        return new Attenuator(new Values(modulusPa(water) * drawnM3 / ripplePa, values.wallCompliancePerPa));
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("attenuator")
                .put("volume", Kind.VOLUME, values.volumeM3)
                .put("wall_compliance", Kind.COMPRESSIBILITY, values.wallCompliancePerPa)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Attenuator that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return "attenuator of " + QuantityText.forPeople(Kind.VOLUME, volume());
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
