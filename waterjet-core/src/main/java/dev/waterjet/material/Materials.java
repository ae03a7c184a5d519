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
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

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

    private static final int MAX_SUGGESTIONS = 4;

    /** A suggestion differs in at most one letter out of this number. */
    private static final int LETTERS_PER_EDIT = 4;

    /** Other words for materials, as a part of an id. */
    private static final Map<String, String> SYNONYMS = Map.of("aluminum", "aluminium", "inox", "stainless");

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
     * Returns the catalogue of the library: machinability numbers of Zeng and Kim, from memory, each with its uncertainty.
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
     * {@code machinability}, {@code relative_uncertainty}, {@code trait}, {@code grade}, {@code source} and {@code note}.
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
        return with(List.of(material));
    }

    /**
     * {@return all materials in their order, unmodifiable}
     */
    public Collection<Material> all() {
        return Collections.unmodifiableCollection(byId.values());
    }

    /**
     * Returns a material by its id, or by a part of its id or name that matches no other. Case does not matter.
     *
     * @param text id or unambiguous part of it, such as {@code "titanium"}
     * @return the material
     * @throws UnknownMaterialException if none matches, or more than one
     */
    public Material get(String text) {
        Material exact = byId.get(text);
        return exact != null ? exact : find(text);
    }

    private Material find(String text) {
        String name = text.strip().toLowerCase(Locale.ROOT);
        String id = name.replaceAll("[\\s_-]+", "-");
        Material exact = byId.get(id);
        if (exact != null) {
            return exact;
        }
        List<Material> matches = new ArrayList<>();
        for (Material material : byId.values()) {
            if (!id.isEmpty()
                    && (material.id().contains(id)
                            || material.name().toLowerCase(Locale.ROOT).contains(name))) {
                matches.add(material);
            }
        }
        if (matches.size() == 1) {
            return matches.get(0);
        }
        throw matches.isEmpty()
                ? UnknownMaterialException.unknown(text, suggestions(id))
                : UnknownMaterialException.ambiguous(
                        text, matches.stream().map(Material::id).toList());
    }

    /** Ids that contain a synonym, or are close in spelling. */
    private List<String> suggestions(String wanted) {
        String synonym = SYNONYMS.get(wanted);
        if (synonym != null) {
            return byId.keySet().stream()
                    .filter(id -> id.contains(synonym))
                    .limit(MAX_SUGGESTIONS)
                    .toList();
        }
        int maximum = Math.max(1, wanted.length() / LETTERS_PER_EDIT);
        return byId.keySet().stream()
                .filter(id -> Spelling.distance(wanted, id) <= maximum)
                .sorted(Comparator.comparingInt((String id) -> Spelling.distance(wanted, id))
                        .thenComparing(Comparator.naturalOrder()))
                .limit(MAX_SUGGESTIONS)
                .toList();
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
