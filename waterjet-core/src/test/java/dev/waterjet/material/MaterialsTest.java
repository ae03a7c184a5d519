package dev.waterjet.material;

import dev.waterjet.ValueContract;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.measure.TextException;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

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
        assertThatThrownBy(() -> Materials.standard().get("alumina"))
                .isInstanceOf(UnknownMaterialException.class)
                .hasMessageContaining("fits more than one material")
                .hasMessageContaining("alumina-ad85, alumina-ad90");
    }

    @ParameterizedTest
    @CsvSource({"titanum, titanium", "granit3, granite", "stainless-305, stainless-304"})
    void anUnknownNameIsRefusedWithNearOnes(String text, String near) {
        assertThatThrownBy(() -> Materials.standard().get(text))
                .isInstanceOfSatisfying(
                        UnknownMaterialException.class,
                        e -> assertThat(e.suggestions()).contains(near));
    }

    @Test
    void anEmptyNameFitsNothing() {
        assertThatThrownBy(() -> Materials.standard().get(" ")).isInstanceOf(UnknownMaterialException.class);
    }

    @Test
    void everyStandardNumberIsFromMemoryAndSaysSo() {
        assertThat(Materials.standard().all()).hasSize(21).allSatisfy(material -> {
            assertThat(material.evidence().grade()).isEqualTo(EvidenceGrade.FROM_MEMORY);
            assertThat(material.evidence().note()).contains("Recalled with");
        });
    }

    @Test
    void aShopAddsItsOwn() {
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
                "x,X,abc,0.1,ductile,assumed,s, | line 2, column 5: machinability \"abc\" is no number",
                "x,X,-1,0.1,ductile,assumed,s, | line 2, column 1: machinability of x is -1; it must be above 0",
                "x,X,80,0.1,bendy,assumed,s, | line 2, column 12: trait \"bendy\" is none of ductile",
                "x,X,80,0.1,ductile,assumed,s | line 2, column 28: the row has 7 cells, not the 8",
                "X!,X,80,0.1,ductile,assumed,s, | \"X!\" is no id of a material",
                "\"x,X | line 2, column 1: the quoted cell never ends",
            })
    void faultyRowsAreRefusedWithTheirPlace(String row, String message) {
        assertThatThrownBy(() -> Materials.parse(HEADING + row + "\n"))
                .isInstanceOf(TextException.class)
                .hasMessageContaining(message);
    }

    @Test
    void aTableOfOtherColumnsIsRefused() {
        assertThatThrownBy(() -> Materials.parse("id,hardness\nx,1\n")).hasMessageContaining("starts with the columns");
        assertThatThrownBy(() -> Materials.parse("")).hasMessageContaining("starts with the columns");
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
                .says("[invar-36, slate]")
                .check();
    }

    @Test
    void ofTwoWithOneIdTheLaterCounts() {
        Materials shop = Materials.standard().with(TITANIUM.withMachinability(120, 0.05, TITANIUM.evidence()));

        assertThat(shop.get("titanium").machinabilitySi()).isEqualTo(120);
        assertThat(shop.all()).hasSameSizeAs(Materials.standard().all());
    }

    /** A word of ten letters may be five edits off: half its length. */
    @Test
    void suggestionsComeNearestFirstAndNoMoreThanFour() {
        Materials catalogue = Materials.of(
                Stream.of("abcdezzzzz", "abcdzzzzzz", "abcdefghzz", "abcdefgzzz", "bbcdefgzzz", "abcdefghzy")
                        .map(id -> Material.of(id, 100, 0.1, MaterialClass.SOFT))
                        .toList());

        assertThat(suggestions(catalogue, "abcdefghij"))
                .containsExactly("abcdefghzy", "abcdefghzz", "abcdefgzzz", "bbcdefgzzz");
        assertThat(suggestions(Materials.of(List.of(catalogue.get("abcdezzzzz"))), "abcdefghij"))
                .containsExactly("abcdezzzzz");
        assertThat(suggestions(Materials.of(List.of(catalogue.get("abcdzzzzzz"))), "abcdefghij"))
                .isEmpty();
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
        assertThatThrownBy(() -> Materials.standard().get("quetzalcoatlus"))
                .isInstanceOf(UnknownMaterialException.class)
                .hasMessage("\"quetzalcoatlus\" is no known material");
    }
}
