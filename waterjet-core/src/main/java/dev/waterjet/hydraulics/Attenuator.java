package dev.waterjet.hydraulics;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.water.WaterState;
import java.io.Serializable;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Volume;

/**
 * A thick-walled vessel of water that smooths the pressure by the spring of the water in it.
 *
 * <p>{@code dp/dt = K (m_in - m_out)/(rho V)}, with {@code K = rho w^2} of water compressed without heat. A wall that
 * gives way softens it: {@code 1/K_eff = 1/K + (2/E) ((Do^2 + Di^2)/(Do^2 - Di^2) + nu)}.
 */
public final class Attenuator implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private final double volumeM3;
    private final double wallGivePerPa;

    private Attenuator(double volumeM3, double wallGivePerPa) {
        this.volumeM3 = Require.positive("volume of the attenuator", volumeM3, Units.LITRE);
        this.wallGivePerPa = wallGivePerPa;
    }

    /**
     * A vessel with a stiff wall.
     *
     * @param volume volume of water in it, above 0
     * @return the attenuator
     */
    public static Attenuator of(Quantity<Volume> volume) {
        return new Attenuator(Kind.VOLUME.si(volume), 0);
    }

    /**
     * This vessel as a tube of a springy wall with closed ends left out.
     *
     * @param outerToInner outer over inner diameter, above 1
     * @param youngsModulus modulus of elasticity of the wall; about 200 GPa for steel (value from memory)
     * @param poissonsRatio Poisson's ratio of the wall, 0 to 0.5; about 0.29 for steel (value from memory)
     * @return the attenuator with that wall
     */
    public Attenuator withDiameterRatio(double outerToInner, Quantity<Pressure> youngsModulus, double poissonsRatio) {
        Require.above("outer over inner diameter", outerToInner, 1, Units.ONE, "");
        double modulusPa = Require.positive(
                "modulus of elasticity of the wall", Kind.PRESSURE.si(youngsModulus), Units.GIGAPASCAL);
        Require.between("Poisson's ratio of the wall", poissonsRatio, 0, 0.5, Units.ONE, "");
        double square = outerToInner * outerToInner;
        return new Attenuator(volumeM3, 2 / modulusPa * ((square + 1) / (square - 1) + poissonsRatio));
    }

    /**
     * This vessel with another volume, its wall kept.
     *
     * @param volume volume of water in it, above 0
     * @return the attenuator of that volume
     */
    public Attenuator withVolume(Quantity<Volume> volume) {
        return new Attenuator(Kind.VOLUME.si(volume), wallGivePerPa);
    }

    /**
     * Volume of water in the vessel.
     *
     * @return the volume, in m3
     */
    public Quantity<Volume> volume() {
        return Kind.VOLUME.of(volumeM3);
    }

    /**
     * Stiffness of water and wall together.
     *
     * @param water water at the mean pressure in the vessel
     * @return the effective modulus, in Pa
     */
    public Quantity<Pressure> effectiveBulkModulus(WaterState water) {
        return Kind.PRESSURE.of(modulusPa(water));
    }

    private double modulusPa(WaterState water) {
        double waterPa = water.densitySi() * water.soundSpeedSi() * water.soundSpeedSi();
        return 1 / (1 / waterPa + wallGivePerPa);
    }

    /**
     * Fall of pressure while a volume is drawn that the pump does not bring. It counts with the density in the vessel.
     *
     * @param missing volume drawn, small against the vessel
     * @param water water at the mean pressure in the vessel
     * @return the ripple from highest to lowest pressure, in Pa
     * @throws dev.waterjet.measure.DomainException if the volume is negative or above a tenth of the vessel
     */
    public Quantity<Pressure> ripple(Quantity<Volume> missing, WaterState water) {
        double missingM3 = Require.notNegative("volume drawn", Kind.VOLUME.si(missing), Units.CUBIC_MILLIMETRE);
        Require.atMost(
                "volume drawn",
                missingM3,
                volumeM3 / 10,
                Units.CUBIC_MILLIMETRE,
                "a tenth of the vessel: it is too small");
        return Kind.PRESSURE.of(modulusPa(water) * missingM3 / volumeM3);
    }

    /**
     * This vessel as large as a wanted ripple asks for.
     *
     * @param missing volume drawn that the pump does not bring, at the density in the vessel
     * @param ripple wanted ripple from highest to lowest pressure, above 0
     * @param water water at the mean pressure in the vessel
     * @return the attenuator of the volume that keeps the ripple
     */
    public Attenuator forRipple(Quantity<Volume> missing, Quantity<Pressure> ripple, WaterState water) {
        double missingM3 = Require.positive("volume drawn", Kind.VOLUME.si(missing), Units.CUBIC_MILLIMETRE);
        double ripplePa = Require.positive("ripple of pressure", Kind.PRESSURE.si(ripple), Units.MEGAPASCAL);
        return new Attenuator(modulusPa(water) * missingM3 / ripplePa, wallGivePerPa);
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("attenuator")
                .put("volume", Kind.VOLUME, volumeM3)
                .put("wall_give", Kind.COMPRESSIBILITY, wallGivePerPa)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Attenuator that && volumeM3 == that.volumeM3 && wallGivePerPa == that.wallGivePerPa;
    }

    @Override
    public int hashCode() {
        return Objects.hash(volumeM3, wallGivePerPa);
    }

    @Override
    public String toString() {
        return "attenuator of " + QuantityText.print(Kind.VOLUME, volume(), Units.LITRE, 4);
    }
}
