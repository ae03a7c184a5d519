package dev.waterjet.material;

import java.io.IOException;
import java.io.InputStream;
import java.io.Serializable;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** A catalogue of materials. Immutable: adding makes a new one. */
public final class Materials implements Serializable {

    private static final long serialVersionUID = 1L;

    private static final int MOST_SUGGESTIONS = 4;

    private final Map<String, Material> byId;

    private Materials(Map<String, Material> byId) {
        this.byId = byId;
    }

    /**
     * The catalogue that comes with the library: machinability numbers of Zeng and Kim, from memory, each with its grade
     * of recall.
     *
     * @return the standard catalogue
     */
    public static Materials standard() {
        return Standard.CATALOGUE;
    }

    /** Reads the data file when it is first wanted, and not before. */
    private static final class Standard {
        static final Materials CATALOGUE = parse(text());

        private static String text() {
            try (InputStream stream = Materials.class.getResourceAsStream("materials.csv")) {
                if (stream == null) {
                    throw new IllegalStateException("the library's catalogue materials.csv is missing from its jar");
                }
                return new String(stream.readAllBytes(), StandardCharsets.UTF_8);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
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
     * A catalogue of given materials.
     *
     * @param materials the materials; of two with one id the later counts
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
     * This catalogue with more materials.
     *
     * @param more materials to add; one whose id is known already replaces it
     * @return the larger catalogue
     */
    public Materials with(Collection<Material> more) {
        List<Material> all = new ArrayList<>(byId.values());
        all.addAll(more);
        return of(all);
    }

    /**
     * This catalogue with one more material.
     *
     * @param material material to add; if its id is known already it replaces that one
     * @return the larger catalogue
     */
    public Materials with(Material material) {
        return with(List.of(material));
    }

    /**
     * All materials.
     *
     * @return the materials in their order, unmodifiable
     */
    public Collection<Material> all() {
        return Collections.unmodifiableCollection(byId.values());
    }

    /**
     * Finds a material by its id, or by a part of its id or name that fits no other. Case does not matter.
     *
     * @param text id or unambiguous part of it, such as {@code "titanium"}
     * @return the material
     * @throws UnknownMaterialException if none fits, or more than one does; with suggestions
     */
    public Material get(String text) {
        String wanted = text.strip().toLowerCase(Locale.ROOT).replaceAll("[\\s_-]+", "-");
        Material exact = byId.get(wanted);
        if (exact != null) {
            return exact;
        }
        List<Material> fitting = wanted.isEmpty()
                ? List.of()
                : byId.values().stream()
                        .filter(material -> material.id().contains(wanted)
                                || material.name()
                                        .toLowerCase(Locale.ROOT)
                                        .contains(text.strip().toLowerCase(Locale.ROOT)))
                        .toList();
        if (fitting.size() == 1) {
            return fitting.get(0);
        }
        throw fitting.isEmpty()
                ? new UnknownMaterialException(text, "is no known material", nearest(wanted))
                : new UnknownMaterialException(
                        text,
                        "fits more than one material",
                        fitting.stream().map(Material::id).toList());
    }

    private List<String> nearest(String wanted) {
        int farthest = Math.max(2, wanted.length() / 2);
        return byId.keySet().stream()
                .filter(id -> Spelling.distance(wanted, id) <= farthest)
                .sorted(Comparator.comparingInt((String id) -> Spelling.distance(wanted, id))
                        .thenComparing(Comparator.naturalOrder()))
                .limit(MOST_SUGGESTIONS)
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
}
