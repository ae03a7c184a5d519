package dev.waterjet.jet;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.measure.Density;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;

/** Abrasive: name, density, mesh, and cutting factor relative to garnet. */
public final class Abrasive implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    /** Almandine garnet has 4000 to 4200 kg/m3 (common handbook range, value from memory). */
    private static final double GARNET_DENSITY = 4100;

    /** Air at 20 C. */
    private static final double AIR_KG_PER_M3 = 1.2041;

    private static final double AIR_PA_S = 1.81e-5;

    /** Checked content, and the serial form. */
    private record Values(String name, double densityKgPerM3, Mesh mesh, double cuttingFactor) implements Serializable {

        private static final long serialVersionUID = 1L;

        Values {
            Objects.requireNonNull(name, "name");
            densityKgPerM3 =
                    Require.positive("density of the abrasive", densityKgPerM3, Units.KILOGRAM_PER_CUBIC_METRE);
            Objects.requireNonNull(mesh, "mesh");
            cuttingFactor = Require.positive("cutting factor of the abrasive", cuttingFactor, Units.ONE);
        }

        private Object readResolve() {
            return new Abrasive(this);
        }
    }

    private final transient Values values;

    private Abrasive(Values values) {
        this.values = values;
    }

    /**
     * Returns almandine garnet, the common abrasive: 4100 kg/m<sup>3</sup>, cutting factor 1 by definition.
     *
     * @param mesh grain size
     * @return the abrasive
     */
    public static Abrasive garnet(Mesh mesh) {
        return new Abrasive(new Values("garnet", GARNET_DENSITY, mesh, 1));
    }

    /**
     * Returns another abrasive. No cutting factor is published for any but garnet; the caller gives one, from test cuts with
     * both abrasives.
     *
     * @param name name of the abrasive
     * @param density density of a particle, above 0
     * @param mesh grain size
     * @param cuttingFactor factor on the cutting ability of the jet in the machinability model, above 0; garnet has 1
     * @return the abrasive
     */
    public static Abrasive of(String name, Quantity<Density> density, Mesh mesh, double cuttingFactor) {
        Objects.requireNonNull(density, "density");
        return new Abrasive(new Values(name, Kind.DENSITY.si(density), mesh, cuttingFactor));
    }

    /**
     * Returns this abrasive with another mesh.
     *
     * @param mesh grain size
     * @return the abrasive with that mesh
     */
    public Abrasive withMesh(Mesh mesh) {
        return new Abrasive(new Values(values.name, values.densityKgPerM3, mesh, values.cuttingFactor));
    }

    /** {@return the name of the abrasive} */
    public String name() {
        return values.name;
    }

    /**
     * Returns the distance in air at rest in which drag takes the factor e off the speed of a mean particle: (4/3) &rho;<sub>p</sub>
     * <i>d</i>/(<i>C</i><sub>D</sub> &rho;), with the drag coefficient of a sphere by Haider and Levenspiel (1989). Angular particles slow down
     * sooner, large ones later; none of them is harmless at such a distance.
     *
     * @param speed speed of the particle, above 0
     * @return the distance, within a factor of 2
     */
    public Estimate<Length> flightLength(Quantity<Speed> speed) {
        Objects.requireNonNull(speed, "speed");
        double speedMPerS = Require.positive("speed of the particle", Kind.SPEED.si(speed), Units.METRE_PER_SECOND);
        double sizeM = values.mesh.meanGrainSizeSi();
        double coefficient = DragKernel.sphere(speedMPerS * sizeM * AIR_KG_PER_M3 / AIR_PA_S);
        double lengthM = DragKernel.flightLength(sizeM, values.densityKgPerM3, coefficient, AIR_KG_PER_M3);
        return Estimate.withinFactor(Kind.LENGTH, lengthM, Math.log(2), List.of());
    }

    /** {@return the density of a particle} */
    public Quantity<Density> density() {
        return Kind.DENSITY.of(values.densityKgPerM3);
    }

    /** {@return the grain size} */
    public Mesh mesh() {
        return values.mesh;
    }

    /** {@return the factor on the cutting ability of the jet in the machinability model; garnet has 1} */
    public double cuttingFactor() {
        return values.cuttingFactor;
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("abrasive")
                .put("name", values.name)
                .put("density", Kind.DENSITY, values.densityKgPerM3)
                .put("cutting_factor", values.cuttingFactor)
                .put("mesh", values.mesh)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Abrasive that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return values.name + " " + values.mesh;
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
