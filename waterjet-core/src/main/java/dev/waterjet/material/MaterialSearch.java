package dev.waterjet.material;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.BiPredicate;

/** Search for a material by any of its names. */
final class MaterialSearch {

    private static final int MAX_SUGGESTIONS = 4;

    /** A suggestion differs in at most one letter out of this number. */
    private static final int LETTERS_PER_EDIT = 4;

    /** US spellings, each with the British one. */
    private static final String[][] SPELLINGS = {
        {"aluminum", "aluminium"},
        {"fiber", "fibre"},
        {"gray", "grey"},
        {"mold", "mould"},
        {"galvanized", "galvanised"},
        {"stabilized", "stabilised"},
    };

    /** From the strictest to the loosest way of matching a wanted name; the first that matches anything decides. */
    private static final List<BiPredicate<Wanted, Material>> WAYS = List.of(
            (wanted, material) -> wanted.isNameOf(material, String::equals),
            (wanted, material) -> wanted.fits(material, String::equals),
            (wanted, material) -> wanted.fits(material, String::startsWith),
            (wanted, material) -> wanted.isNameOf(material, String::contains));

    /** Name that is looked for: its letters and digits, and its words. */
    private record Wanted(String compact, List<String> words) {

        /** Whether a whole name of a material is the wanted one, or contains it. */
        boolean isNameOf(Material material, BiPredicate<String, String> fit) {
            for (String name : names(material)) {
                if (fit.test(MaterialSearch.compact(name), compact)) {
                    return true;
                }
            }
            return false;
        }

        /** Whether each word fits a word of the names of a material, or of its group. */
        boolean fits(Material material, BiPredicate<String, String> fit) {
            Set<String> known = new HashSet<>(wordsOf(material.group()));
            names(material).forEach(name -> known.addAll(wordsOf(name)));
            return words.stream().allMatch(word -> known.stream().anyMatch(other -> fit.test(other, word)));
        }
    }

    private MaterialSearch() {}

    static Material find(Collection<Material> materials, String text) {
        Wanted wanted = new Wanted(compact(text), wordsOf(text));
        if (wanted.compact.isEmpty()) {
            throw UnknownMaterialException.unknown(text, List.of());
        }
        for (BiPredicate<Wanted, Material> way : WAYS) {
            List<Material> matches = materials.stream()
                    .filter(material -> way.test(wanted, material))
                    .toList();
            if (matches.size() == 1) {
                return matches.get(0);
            }
            if (!matches.isEmpty()) {
                throw UnknownMaterialException.ambiguous(
                        text, matches.stream().map(Material::id).toList());
            }
        }
        throw UnknownMaterialException.unknown(text, suggestions(materials, wanted));
    }

    private static List<String> names(Material material) {
        List<String> names = new ArrayList<>(material.aliases());
        names.add(material.id());
        names.add(material.name());
        return names;
    }

    /** Lower-case letters and digits alone, in British spelling. */
    private static String compact(String name) {
        StringBuilder compact = new StringBuilder(name.length());
        for (int i = 0; i < name.length(); i++) {
            char c = name.charAt(i);
            if (Character.isLetterOrDigit(c)) {
                compact.append(Character.toLowerCase(c));
            }
        }
        String text = compact.toString();
        for (String[] spelling : SPELLINGS) {
            text = text.replace(spelling[0], spelling[1]);
        }
        return text;
    }

    /** Words in lower case and British spelling; a point belongs to a number such as 1.4301. */
    private static List<String> wordsOf(String name) {
        List<String> words = new ArrayList<>();
        int start = 0;
        for (int end = 0; end <= name.length(); end++) {
            boolean isInWord =
                    end < name.length() && (Character.isLetterOrDigit(name.charAt(end)) || name.charAt(end) == '.');
            if (!isInWord) {
                if (end > start) {
                    words.add(british(name.substring(start, end).toLowerCase(Locale.ROOT)));
                }
                start = end + 1;
            }
        }
        return words;
    }

    private static String british(String word) {
        for (String[] spelling : SPELLINGS) {
            if (word.equals(spelling[0])) {
                return spelling[1];
            }
        }
        return word;
    }

    /** Ids of materials whose group has the wanted words, or else of those that are near in spelling. */
    private static List<String> suggestions(Collection<Material> materials, Wanted wanted) {
        List<String> ofGroup = materials.stream()
                .filter(material -> isIn(wanted, material.group()))
                .map(Material::id)
                .limit(MAX_SUGGESTIONS)
                .toList();
        if (!ofGroup.isEmpty()) {
            return ofGroup;
        }
        String id = String.join("-", wanted.words);
        int maximum = id.length() / LETTERS_PER_EDIT;
        return materials.stream()
                .map(material -> Map.entry(distance(id, material), material.id()))
                .filter(near -> near.getKey() <= maximum)
                .sorted(Comparator.comparingInt((Map.Entry<Integer, String> near) -> near.getKey())
                        .thenComparing(Map.Entry::getValue))
                .map(Map.Entry::getValue)
                .limit(MAX_SUGGESTIONS)
                .toList();
    }

    private static boolean isIn(Wanted wanted, String group) {
        List<String> known = wordsOf(group);
        return wanted.words.stream().allMatch(word -> known.stream().anyMatch(other -> isSameWord(word, other)));
    }

    private static boolean isSameWord(String word, String other) {
        return word.equals(other) || word.equals(other + "s") || other.equals(word + "s");
    }

    private static int distance(String wanted, Material material) {
        return names(material).stream()
                .mapToInt(name -> Spelling.distance(wanted, String.join("-", wordsOf(name))))
                .min()
                .orElseThrow();
    }
}
