package dev.waterjet.material;

import java.io.IOException;
import java.io.InputStream;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * Catalogue of materials. Immutable: a change returns a new catalogue.
 *
 * <pre>{@code
 * Material titanium = Materials.standard().get("titanium");
 * Materials shop = Materials.standard().with(Material.of("invar-36", 85, 0.2, MaterialClass.DUCTILE));
 * }</pre>
 */
public final class Materials implements Serializable {

    private static final long serialVersionUID = 1L;

    /** Serial form: the materials in their order. */
    private record Values(List<Material> materials) implements Serializable {

        private static final long serialVersionUID = 1L;

        Values {
            materials = List.copyOf(materials);
        }

        private Object readResolve() {
            return of(materials);
        }
    }

    private final transient Map<String, Material> byId;

    private Materials(Map<String, Material> byId) {
        this.byId = byId;
    }

    /**
     * Returns the catalogue of the library: 21 machinability numbers of Zeng and Kim, from memory, and about 100 further
     * materials whose number is assumed by a stated class rule, each with its uncertainty.
     *
     * @return the standard catalogue
     */
    public static Materials standard() {
        return Standard.CATALOGUE;
    }

    /** Reads the data file at the first use of the standard catalogue. */
    private static final class Standard {
        static final Materials CATALOGUE = parse(text());

        private static String text() {
            try (InputStream stream = Materials.class.getResourceAsStream("materials.csv")) {
                if (stream == null) {
                    throw new AssertionError("materials.csv is missing from the jar of the library");
                }
                return new String(stream.readAllBytes(), StandardCharsets.UTF_8);
            } catch (IOException e) {
                throw new AssertionError("materials.csv cannot be read from the jar of the library", e);
            }
        }
    }

    /**
     * Reads a catalogue from text in the form of the standard one: RFC 4180 with the columns {@code id}, {@code name},
     * {@code machinability}, {@code relative_uncertainty}, {@code trait}, {@code grade}, {@code source} and {@code note}. Further
     * columns may follow, empty where nothing is known: {@code group}, {@code aliases} (separated by semicolons), {@code
     * recall} (the part of the relative uncertainty that comes from memory), {@code rule} (code of the rule by which the
     * machinability number is assumed), {@code density_kg_per_m3}, {@code young_gpa}, {@code strength_mpa}, {@code
     * strength_uncertainty}, {@code water_alone} (yes or thin) and {@code hazard}.
     *
     * @param csv the text
     * @return the catalogue
     * @throws dev.waterjet.measure.TextException if the text is not of that form, with line and column
     */
    public static Materials parse(String csv) {
        return of(MaterialText.parse(csv));
    }

    /**
     * Returns a catalogue of materials.
     *
     * @param materials the materials; of two with the same id the later one is taken
     * @return the catalogue
     */
    public static Materials of(Collection<Material> materials) {
        Objects.requireNonNull(materials, "materials");
        Map<String, Material> byId = new LinkedHashMap<>();
        for (Material material : materials) {
            byId.put(material.id(), material);
        }
        return new Materials(byId);
    }

    /**
     * Returns this catalogue with more materials.
     *
     * @param more materials to add; one with an existing id replaces the material of that id
     * @return the extended catalogue
     */
    public Materials with(Collection<Material> more) {
        Objects.requireNonNull(more, "more");
        List<Material> all = new ArrayList<>(byId.values());
        all.addAll(more);
        return of(all);
    }

    /**
     * Returns this catalogue with one more material.
     *
     * @param material material to add; if its id exists, it replaces the material of that id
     * @return the extended catalogue
     */
    public Materials with(Material material) {
        Objects.requireNonNull(material, "material");
        return with(List.of(material));
    }

    /** {@return all materials in their order, unmodifiable} */
    public Collection<Material> all() {
        return Collections.unmodifiableCollection(byId.values());
    }

    /**
     * Returns a material by its id, by one of its other names, or by a part of them that fits no other material. An exact name
     * comes before whole words, whole words before their beginnings. Case, hyphens and US or British spelling do not matter.
     *
     * @param text id, name, standard number or unambiguous part, such as {@code "titanium"}, {@code "1.4301"} or {@code
     *     "AISI 304"}
     * @return the material
     * @throws UnknownMaterialException if none matches, or more than one
     */
    public Material get(String text) {
        Objects.requireNonNull(text, "text");
        Material exact = byId.get(text);
        return exact != null ? exact : MaterialSearch.find(byId.values(), text);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Materials that && byId.equals(that.byId);
    }

    @Override
    public int hashCode() {
        return byId.hashCode();
    }

    @Override
    public String toString() {
        return byId.keySet().toString();
    }

    private Object writeReplace() {
        return new Values(List.copyOf(byId.values()));
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
