package dev.waterjet.material;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Ways of finding a material, from the strictest to the loosest. */
class MaterialSearchTest {

    private static Materials named(String... names) {
        return Materials.of(Stream.of(names)
                .map(name -> Material.of(
                                name.toLowerCase(Locale.ROOT).replace(' ', '-').replace(".", "-"),
                                100,
                                0.1,
                                MaterialClass.SOFT)
                        .withName(name))
                .toList());
    }

    private static UnknownMaterialException refused(Materials materials, String text) {
        return assertThatExceptionOfType(UnknownMaterialException.class)
                .isThrownBy(() -> materials.get(text))
                .actual();
    }

    /** The whole name before a word, a word before its begin, the begin of a word before its inside. */
    @ParameterizedTest
    @CsvSource({
        "ash, ash",
        "ASH, ash",
        "a-s-h, ash",
        "white, white-ash",
        "ash white, white-ash",
        "whitea, white-ash",
        "pine, red-pine",
        "pineap, pineapple-fibre",
        "app fib, pineapple-fibre",
        "neappl, pineapple-fibre",
        "pineapple fiber, pineapple-fibre",
        "1.43, steel-1-43",
        "ee, steel-1-43"
    })
    void strictestWayDecides(String text, String id) {
        Materials materials = named("ash", "white ash", "red pine", "pineapple fibre apple", "steel 1.43");
        String expected = id.equals("pineapple-fibre") ? "pineapple-fibre-apple" : id;
        assertThat(materials.get(text).id()).isEqualTo(expected);
    }

    @Test
    void namesThatFitSeveralAreAmbiguousInTheSameWay() {
        Materials materials = named("red oak", "white oak", "oakum", "cork oak bark");
        UnknownMaterialException words = refused(materials, "oak");
        assertThat(words.code()).isEqualTo("ambiguous-material");
        assertThat(words.suggestions()).containsExactly("red-oak", "white-oak", "cork-oak-bark");
        assertThat(words.parameters()).containsEntry("suggestions", "red-oak, white-oak, cork-oak-bark");
        assertThat(refused(materials, "oa").suggestions()).hasSize(4);
        assertThat(refused(materials, "k").suggestions())
                .containsExactly("red-oak", "white-oak", "oakum", "cork-oak-bark");
        assertThat(materials.get("cork").id()).isEqualTo("cork-oak-bark");
        // every word fits
        assertThat(materials.get("oak bark").id()).isEqualTo("cork-oak-bark");
        assertThat(refused(materials, "oak leaf").code()).isEqualTo("unknown-material");
        assertThat(refused(materials, "?!").suggestions()).isEmpty();
        // between words any signs
        Materials pines = named("red pine", "red pineapple");
        assertThat(pines.get("pine, / red").id()).isEqualTo("red-pine");
        assertThat(refused(pines, "pin  red").suggestions()).hasSize(2);
    }

    @Test
    void eightChoicesAreShownAndTheOthersCounted() {
        String[] eight = Stream.of("a", "b", "c", "d", "e", "f", "g", "h")
                .map(end -> "oak " + end)
                .toArray(String[]::new);
        List<String> nine = new ArrayList<>(List.of(eight));
        nine.add("oak i");
        nine.add("oak j");
        String shown = "oak-a, oak-b, oak-c, oak-d, oak-e, oak-f, oak-g, oak-h";
        assertThat(refused(named(eight), "oak").parameters()).containsEntry("suggestions", shown);
        UnknownMaterialException more = refused(named(nine.toArray(new String[0])), "oak");
        assertThat(more.parameters()).containsEntry("suggestions", shown + " and 2 more");
        assertThat(more.suggestions()).hasSize(10);
        assertThat(more.requested()).isEqualTo("oak");
    }

    /** US spellings of words, alone and within a name. */
    @ParameterizedTest
    @CsvSource({
        "aluminum, aluminium",
        "fiber, fibre",
        "gray, grey",
        "mold, mould",
        "galvanized, galvanised",
        "stabilized, stabilised"
    })
    void spellingOfBothSidesOfTheOceanFits(String american, String british) {
        Materials materials = named("old " + british + " plate", "new iron");
        assertThat(materials.get(american).name()).contains(british);
        assertThat(materials.get("plate " + american).name()).contains(british);
        assertThat(materials
                        .get("Old" + american.toUpperCase(Locale.ROOT) + "plate")
                        .name())
                .contains(british);
        assertThat(named("old " + american, "new iron").get(british).name()).contains(american);
    }

    /** A group in the plural or the singular names its materials, four at most. */
    @Test
    void materialsOfAGroupAreSuggested() {
        StringBuilder rows =
                new StringBuilder("id,name,machinability,relative_uncertainty,trait,grade,source,note,group\n");
        for (String id : List.of("u", "v", "w", "x", "y")) {
            rows.append(id).append(",Name ").append(id).append(",100,0.1,soft,assumed,s,,hard plastics\n");
        }
        rows.append("glass,Glass,100,0.1,soft,assumed,s,,mineral\n");
        Materials materials = Materials.parse(rows.toString());
        assertThat(refused(materials, "plastics hard").code()).isEqualTo("ambiguous-material");
        assertThat(refused(materials, "hards plastic").suggestions()).containsExactly("u", "v", "w", "x");
        assertThat(materials.get("mineral").id()).isEqualTo("glass");
        assertThat(refused(materials, "minerals").suggestions()).containsExactly("glass");
        assertThat(refused(materials, "mineral plastics").suggestions()).isEmpty();
    }

    /** One edit for each four letters, and not one more. */
    @ParameterizedTest
    @CsvSource({
        "slat, true",
        "slte, true",
        "sla, false",
        "slatee, true",
        "xlatx, false",
        "slaaaate, false",
        "slaateee, false"
    })
    void nearSpellingsAreSuggested(String text, boolean isNear) {
        Materials materials = Materials.of(List.of(Material.of("slate", 300, 0.1, MaterialClass.BRITTLE)));
        if (text.equals("slat") || text.equals("sla")) {
            assertThat(materials.get(text).id()).isEqualTo("slate");
        } else {
            assertThat(refused(materials, text).suggestions()).isEqualTo(isNear ? List.of("slate") : List.of());
        }
    }

    /** The number of edits by its definition, over short words of two letters. */
    @Test
    void distanceIsThatOfItsDefinition() {
        SplittableRandom random = new SplittableRandom(3);
        for (int i = 0; i < 300; i++) {
            String a = word(random);
            String b = word(random);
            assertThat(Spelling.distance(a, b)).as(a + " " + b).isEqualTo(edits(a, b));
            // another part of the id, which no word of this length is near to
            assertThat(Spelling.distance(a, "zzzzzzzzzzzz-" + b)).isEqualTo(edits(a, b));
        }
    }

    private static String word(SplittableRandom random) {
        StringBuilder word = new StringBuilder();
        for (int i = random.nextInt(6); i > 0; i--) {
            word.append((char) ('a' + random.nextInt(2)));
        }
        return word.toString();
    }

    private static int edits(String a, String b) {
        if (a.isEmpty() || b.isEmpty()) {
            return a.length() + b.length();
        }
        String shortA = a.substring(1);
        String shortB = b.substring(1);
        int change = edits(shortA, shortB) + (a.charAt(0) == b.charAt(0) ? 0 : 1);
        return Math.min(change, 1 + Math.min(edits(shortA, b), edits(a, shortB)));
    }
}
