package dev.waterjet.material;

import static dev.waterjet.Refusals.assertRefused;
import static dev.waterjet.measure.Measures.kilogramsPerCubicMetre;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.ValueContract;
import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class MaterialTest {

    private static final Evidence CUTS = Evidence.of(EvidenceGrade.FITTED, Source.of("six cuts on Hollow Ridge"));

    private static Material slate() {
        return Material.of("roof-slate", 300, 0.1, MaterialClass.BRITTLE);
    }

    @Test
    void isAValue() {
        ValueContract.of(MaterialTest::slate)
                .has("id", Material::id, "roof-slate")
                .has("class", Material::materialClass, MaterialClass.BRITTLE)
                .change("name", material -> material.withName("Slate of the roof"), Material::name, "Slate of the roof")
                .change(
                        "machinability",
                        material -> material.withMachinability(310, 0.1, material.evidence()),
                        Material::machinabilitySi,
                        310.0)
                .change(
                        "relative uncertainty",
                        material -> material.withMachinability(300, 0.05, material.evidence()),
                        Material::relativeUncertainty,
                        0.05)
                .change("evidence", material -> material.withMachinability(300, 0.1, CUTS), Material::evidence, CUTS)
                .change(
                        "density",
                        material -> material.withDensity(kilogramsPerCubicMetre(2700)),
                        material -> material.density().isPresent(),
                        true)
                .change(
                        "aliases",
                        material -> material.withAliases(List.of("roofing")),
                        Material::aliases,
                        List.of("roofing"))
                .differs(
                        "id",
                        Material.of("roof-tile", 300, 0.1, MaterialClass.BRITTLE)
                                .withName("roof slate"))
                .differs("class", Material.of("roof-slate", 300, 0.1, MaterialClass.SOFT))
                .prints("roof slate", "300")
                .check();
    }

    @Test
    void isNamedByItsIdAndAssumed() {
        assertThat(slate().name()).isEqualTo("roof slate");
        assertThat(slate().evidence().grade()).isEqualTo(EvidenceGrade.ASSUMED);
    }

    @Test
    void machinabilityIsAnEstimate() {
        assertThat(slate().machinability().si()).isEqualTo(300);
        assertThat(slate().machinability().standardUncertaintySi()).isCloseTo(30, within(1e-12));
        assertThat(slate().machinability().cautions()).isEmpty();
    }

    @Test
    void aQuarterOfUncertaintyDrawsACaution() {
        assertThat(slate().withMachinability(300, Math.nextDown(0.25), CUTS).cautions())
                .isEmpty();
        Material unsure = slate().withMachinability(300, 0.25, CUTS);

        assertThat(unsure.cautions()).singleElement().satisfies(caution -> {
            assertThat(caution.code()).isEqualTo("unsure-machinability");
            assertThat(caution.message().parameters())
                    .containsEntry("material", "roof slate")
                    .containsValue(0.25)
                    .containsEntry("factor", 1.6);
        });
        assertThat(unsure.machinability().cautions()).isEqualTo(unsure.cautions());
    }

    @ParameterizedTest
    @ValueSource(strings = {"a", "z", "0", "9", "az09", "stainless-304", "a-b-c"})
    void anIdHasLettersDigitsAndSingleHyphens(String id) {
        assertThat(Material.of(id, 1, 0, MaterialClass.SOFT).id()).isEqualTo(id);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "-", "-a", "a-", "a--b", "A", "a b", "a_b", "`", "{", "/", ":", "\u00e4"})
    void noOtherIdIsAccepted(String id) {
        assertThat(assertRefused(() -> Material.of(id, 1, 0, MaterialClass.SOFT), "material-id")
                        .parameters())
                .containsEntry("id", id);
    }

    @Test
    void impossibleNumbersAreRefused() {
        assertRefused(
                () -> Material.of("slate", 0, 0.1, MaterialClass.BRITTLE), "must-be-above", "machinability number", 0);
        assertRefused(
                () -> Material.of("slate", 300, -0.1, MaterialClass.BRITTLE),
                "must-be-at-least",
                "relative uncertainty of the machinability number",
                0);
    }

    /** Levenshtein's distance of kitten and sitting is the textbook's 3. */
    @ParameterizedTest
    @CsvSource({
        "kitten, sitting, 3",
        "'', abc, 3",
        "abc, '', 3",
        "ab, a, 1",
        "a, ab, 1",
        "same, same, 0",
        "304, stainless-304, 0",
        "stanless, stainless-304, 1",
    })
    void distanceOfSpellingsIsTheirNumberOfEdits(String wanted, String id, int edits) {
        assertThat(Spelling.distance(wanted, id)).isEqualTo(edits);
    }
}
