package dev.waterjet.material;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.TextException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MaterialsTest {

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
        Materials shop = Materials.standard().with(Material.of("invar-36", 85, 0.2, Trait.DUCTILE));
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
    void workpiecesHaveAThicknessThatAJetCanCut() {
        Material titanium = Materials.standard().get("titanium");

        assertThatThrownBy(() -> Workpiece.of(titanium, dev.waterjet.measure.Measures.millimetres(-1)))
                .isInstanceOf(DomainException.class)
                .hasMessageContaining("thickness is -1 mm; it must be above 0 mm");
    }
}
