package dev.waterjet.vessel;

import dev.waterjet.evidence.Caution;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.water.Water;
import dev.waterjet.water.WaterState;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Energy;
import javax.measure.quantity.Volume;

/**
 * Energy that water and wall of a vessel release if the pressure is lost at once.
 *
 * <p>Water: work of the isentropic expansion to the standard atmosphere beyond that of pushing the atmosphere back, per mass
 * <i>u</i>(<i>p</i>, <i>s</i>) - <i>u</i>(<i>p</i><sub>0</sub>, <i>s</i>) - <i>p</i><sub>0</sub> (<i>v</i><sub>0</sub> -
 * <i>v</i>). At 400 MPa and 20 &deg;C it is 21.6 kJ per litre of vessel, where <i>p</i><sup>2</sup>/(2 <i>K</i>) with
 * the bulk modulus at that pressure gives a quarter too little. Wall: &chi; <i>p</i><sup>2</sup> <i>V</i>/2, with the {@linkplain ThickTube#compliance compliance} &chi;.
 *
 * @param water energy of the water
 * @param wall energy of the elastic wall
 * @param cautions cautions that apply, one or more
 */
public record StoredEnergy(Quantity<Energy> water, Quantity<Energy> wall, List<Caution> cautions) implements Described {

    private static final double ATMOSPHERE_PA = 101_325;

    /**
     * Checks the components.
     *
     * @param water energy of the water
     * @param wall energy of the elastic wall
     * @param cautions cautions that apply
     */
    public StoredEnergy {
        Objects.requireNonNull(water, "water");
        Objects.requireNonNull(wall, "wall");
        cautions = List.copyOf(Objects.requireNonNull(cautions, "cautions"));
    }

    /**
     * Returns the energy in a vessel.
     *
     * @param water water in the vessel, of absolute pressure, at least the standard atmosphere
     * @param volume volume of water in it, above 0
     * @param tube the wall
     * @param ends ends of the tube
     * @return the energies
     * @throws dev.waterjet.measure.DomainException if the pressure is below the standard atmosphere, or water evaporates in part when it
     *     expands
     */
    public static StoredEnergy of(WaterState water, Quantity<Volume> volume, ThickTube tube, Ends ends) {
        Objects.requireNonNull(water, "water");
        Objects.requireNonNull(volume, "volume");
        Objects.requireNonNull(tube, "tube");
        Objects.requireNonNull(ends, "ends");
        double volumeM3 = Require.positive("volume of the vessel", Kind.VOLUME.si(volume), Units.LITRE);
        double pressurePa = Require.atLeast(
                "absolute pressure of water",
                water.pressureSi(),
                ATMOSPHERE_PA,
                Units.MEGAPASCAL,
                "the standard atmosphere");
        double gaugePa = pressurePa - ATMOSPHERE_PA;
        return new StoredEnergy(
                Kind.ENERGY.of(waterJPerM3(water) * volumeM3),
                Kind.ENERGY.of(tube.complianceSi(ends) * gaugePa * gaugePa / 2 * volumeM3),
                VesselCautions.ofEnergy());
    }

    private static double waterJPerM3(WaterState water) {
        WaterState relaxed = Water.metastable().atEntropySi(ATMOSPHERE_PA, water.entropySi());
        double workJPerKg = water.internalEnergySi()
                - relaxed.internalEnergySi()
                - ATMOSPHERE_PA * (1 / relaxed.densitySi() - 1 / water.densitySi());
        return Math.max(0, workJPerKg) * water.densitySi();
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("stored energy")
                .put("water", Kind.ENERGY, Kind.ENERGY.si(water))
                .put("wall", Kind.ENERGY, Kind.ENERGY.si(wall))
                .put("cautions", cautions)
                .map();
    }

    @Override
    public String toString() {
        return QuantityText.forPeople(Kind.ENERGY, water) + " in the water, "
                + QuantityText.forPeople(Kind.ENERGY, wall) + " in the wall";
    }
}
