package dev.waterjet.material;

import static dev.waterjet.Refusals.assertRefused;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import dev.waterjet.Refusals;
import dev.waterjet.ValueContract;
import dev.waterjet.evidence.EvidenceGrade;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class MaterialsTest {

    private static final Material TITANIUM = Materials.standard().get("titanium");

    private static final String HEADING = "id,name,machinability,relative_uncertainty,trait,grade,source,note\n";

    /** Zeng, Kim, Wallace 1992 and Zeng, Kim 1993, numbers from memory. */
    @ParameterizedTest
    @CsvSource({
        "titanium, 115",
        "granite, 322",
        "304, 81.9",
        "6061, 213",
        "Float Glass, 596",
        "mild steel, 87.6",
        "MILD_STEEL, 87.6",
        "pine, 2637",
        "pmma, 690",
    })
    void isFoundByIdOrAnUnambiguousPartOfIt(String text, double machinability) {
        assertThat(Materials.standard().get(text).machinabilitySi()).isEqualTo(machinability);
    }

    @Test
    void anAmbiguousPartIsRefusedWithTheChoices() {
        assertRefused(() -> Materials.standard().get("alumina"), "ambiguous-material");
        assertThat(suggestions(Materials.standard(), "alumina")).containsExactly("alumina-ad85", "alumina-ad90");
    }

    @ParameterizedTest
    @CsvSource({"titanum, titanium", "granit3, granite", "stainless-305, stainless-304"})
    void anUnknownNameIsRefusedWithNearOnes(String text, String near) {
        assertThat(suggestions(Materials.standard(), text)).contains(near);
    }

    @Test
    void anEmptyNameMatchesNothing() {
        assertRefused(() -> Materials.standard().get(" "), "unknown-material");
    }

    @Test
    void everyStandardNumberIsFromMemoryAndSaysSo() {
        assertThat(Materials.standard().all()).hasSize(21).allSatisfy(material -> {
            assertThat(material.evidence().grade()).isEqualTo(EvidenceGrade.FROM_MEMORY);
            assertThat(material.evidence().note()).contains("Recalled with");
        });
    }

    @Test
    void aShopAddsItsOwnMaterials() {
        Materials shop = Materials.standard().with(Material.of("invar-36", 85, 0.2, MaterialClass.DUCTILE));
        Materials fromText = Materials.standard()
                .with(Materials.parse(HEADING + "invar-36,\"Invar, 36 % nickel\",85,0.2,ductile,assumed,our cuts,\n")
                        .all());

        assertThat(shop.get("invar").machinabilitySi()).isEqualTo(85);
        assertThat(fromText.get("invar").name()).isEqualTo("Invar, 36 % nickel");
        assertThat(Materials.standard().all()).hasSize(21);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "x,X,abc,0.1,ductile,assumed,s, | line 2, column 5: not-a-number",
                "x,X,-1,0.1,ductile,assumed,s, | line 2, column 1: must-be-above",
                "x,X,80,0.1,bendy,assumed,s, | line 2, column 12: unknown-value",
                "x,X,80,0.1,ductile,guessed,s, | line 2, column 20: unknown-value",
                "x,X,80,0.1,ductile,assumed,s | line 2, column 28: wrong-cell-count",
                "X!,X,80,0.1,ductile,assumed,s, | line 2, column 1: material-id",
                "\"x,X | line 2, column 1: open-quote",
            })
    void faultyRowsAreRefusedWithTheirPlace(String row, String refusal) {
        assertThat(Refusals.of(() -> Materials.parse(HEADING + row + "\n"))).isEqualTo(refusal);
    }

    @Test
    void aTableOfOtherColumnsIsRefused() {
        assertRefused(() -> Materials.parse("id,hardness\nx,1\n"), "wrong-columns");
        assertRefused(() -> Materials.parse(""), "wrong-columns");
    }

    @Test
    void aCatalogueIsAValue() {
        Material invar = Material.of("invar-36", 85, 0.2, MaterialClass.DUCTILE);
        Material slate = Material.of("slate", 300, 0.2, MaterialClass.BRITTLE);

        ValueContract.of(() -> Materials.of(List.of(invar, slate)))
                .change(
                        "all",
                        catalogue -> catalogue.with(TITANIUM),
                        catalogue -> catalogue.all().size(),
                        3)
                .differs("fewer", Materials.of(List.of(invar)))
                .prints("[invar-36, slate]")
                .check();
    }

    @Test
    void ofTwoWithOneIdTheLaterIsTaken() {
        Materials shop = Materials.standard().with(TITANIUM.withMachinability(120, 0.05, TITANIUM.evidence()));

        assertThat(shop.get("titanium").machinabilitySi()).isEqualTo(120);
        assertThat(shop.all()).hasSameSizeAs(Materials.standard().all());
    }

    /** A word of ten letters can be two edits away: one for each four letters. */
    @Test
    void suggestionsAreSortedAndAtMostFour() {
        Materials catalogue = Materials.of(Stream.of(
                        "abcdefgzzz",
                        "zzcdefghij",
                        "abcdefghzz",
                        "abcdefghiz",
                        "bbcdefghij",
                        "abzdefghzj",
                        "abcdefghzy")
                .map(id -> Material.of(id, 100, 0.1, MaterialClass.SOFT))
                .toList());

        assertThat(suggestions(catalogue, "abcdefghij"))
                .containsExactly("abcdefghiz", "bbcdefghij", "abcdefghzy", "abcdefghzz");
        assertThat(suggestions(Materials.of(List.of(catalogue.get("abcdefgzzz"))), "abcdefghij"))
                .isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"brass", "foam", "carbon-fibre"})
    void materialsThatOnlyShareLettersAreNotSuggested(String text) {
        assertThat(suggestions(Materials.standard(), text)).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"aluminum, aluminium-6061-t6", "inox, stainless-304"})
    void synonymsAreSuggested(String text, String id) {
        assertThat(suggestions(Materials.standard(), text)).contains(id);
    }

    private static List<String> suggestions(Materials catalogue, String wanted) {
        return assertThatExceptionOfType(UnknownMaterialException.class)
                .isThrownBy(() -> catalogue.get(wanted))
                .satisfies(e -> assertThat(e.requested()).isEqualTo(wanted))
                .actual()
                .suggestions();
    }

    @Test
    void aNameLikeNoOtherIsRefusedWithoutSuggestions() {
        assertRefused(() -> Materials.standard().get("quetzalcoatlus"), "unknown-material");
        assertThat(suggestions(Materials.standard(), "quetzalcoatlus")).isEmpty();
    }
}
