package dev.waterjet.jet;

import dev.waterjet.measure.Density;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;

/** A cutting grain: its name, density, mesh, and how well it cuts beside garnet. */
public final class Abrasive implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    /** Almandine garnet has 4000 to 4200 kg/m3 (common handbook range, from memory). */
    private static final double GARNET_DENSITY = 4100;

    private final String name;
    private final double densityKgPerM3;
    private final Mesh mesh;
    private final double cuttingFactor;

    private Abrasive(String name, double densityKgPerM3, Mesh mesh, double cuttingFactor) {
        this.name = Objects.requireNonNull(name, "name");
        this.densityKgPerM3 =
                Require.positive("density of the abrasive", densityKgPerM3, Units.KILOGRAM_PER_CUBIC_METRE);
        this.mesh = Objects.requireNonNull(mesh, "mesh");
        this.cuttingFactor = Require.positive("cutting factor of the abrasive", cuttingFactor, Units.ONE);
    }

    /**
     * Almandine garnet, the usual grain: 4100 kg/m3, cutting factor 1 by definition.
     *
     * @param mesh size of the grains
     * @return the abrasive
     */
    public static Abrasive garnet(Mesh mesh) {
        return new Abrasive("garnet", GARNET_DENSITY, mesh, 1);
    }

    /**
     * Another grain. No published cutting factor is known for any but garnet, so the caller states one, from test cuts of
     * both.
     *
     * @param name name of the grain
     * @param density density of a grain
     * @param mesh size of the grains
     * @param cuttingFactor factor on the jet's cutting ability in the machinability model, garnet being 1
     * @return the abrasive
     */
    public static Abrasive of(String name, Quantity<Density> density, Mesh mesh, double cuttingFactor) {
        return new Abrasive(name, Kind.DENSITY.si(density), mesh, cuttingFactor);
    }

    /**
     * This abrasive in another mesh.
     *
     * @param mesh size of the grains
     * @return the abrasive in that mesh
     */
    public Abrasive withMesh(Mesh mesh) {
        return new Abrasive(name, densityKgPerM3, mesh, cuttingFactor);
    }

    /**
     * Name of the grain.
     *
     * @return the name
     */
    public String name() {
        return name;
    }

    /**
     * Density of a grain.
     *
     * @return the density, in kg/m3
     */
    public Quantity<Density> density() {
        return Kind.DENSITY.of(densityKgPerM3);
    }

    /**
     * Size of the grains.
     *
     * @return the mesh
     */
    public Mesh mesh() {
        return mesh;
    }

    /**
     * Factor on the jet's cutting ability in the machinability model.
     *
     * @return the factor, garnet being 1
     */
    public double cuttingFactor() {
        return cuttingFactor;
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("abrasive")
                .put("name", name)
                .put("density", Kind.DENSITY, densityKgPerM3)
                .put("cutting_factor", cuttingFactor)
                .put("mesh", mesh)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Abrasive that
                && name.equals(that.name)
                && densityKgPerM3 == that.densityKgPerM3
                && mesh.equals(that.mesh)
                && cuttingFactor == that.cuttingFactor;
    }

    @Override
    public int hashCode() {
        return Objects.hash(name, densityKgPerM3, mesh, cuttingFactor);
    }

    @Override
    public String toString() {
        return name + " " + mesh;
    }
}
