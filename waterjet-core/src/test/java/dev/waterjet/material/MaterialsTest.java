package dev.waterjet.material;

import static dev.waterjet.Refusals.assertRefused;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import dev.waterjet.Refusals;
import dev.waterjet.ValueContract;
import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.measure.Kind;
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
        assertThat(suggestions(Materials.standard(), "alumina"))
                .containsExactly("alumina-ad85", "alumina-ad90", "alumina-96", "alumina-99");
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

    /** Names of the trade: EN, AISI and UNS designations, US spelling, words of the shop. */
    @ParameterizedTest
    @CsvSource({
        "aluminum, aluminium-6061-t6",
        "Aluminium, aluminium-6061-t6",
        "brass, brass-cuzn37",
        "1.4301, stainless-304",
        "AISI 304, stainless-304",
        "UNS S31603, stainless-316l",
        "1.4404, stainless-316l",
        "S355, steel-s355j2",
        "s355 j2, steel-s355j2",
        "Ti-6Al-4V, titanium-grade-5",
        "ti6al4v, titanium-grade-5",
        "6061, aluminium-6061-t6",
        "5083, aluminium-5083",
        "EN AW-7075, aluminium-7075-t6",
        "AISI 4140, steel-42crmo4",
        "AR500, wear-plate-500-hb",
        "duplex, stainless-duplex-2205",
        "float glass, float-glass",
        "CFRP, cfrp",
        "carbon fiber, cfrp",
        "carbon-fibre, cfrp",
        "FR4, fr-4",
        "G10, fr-4",
        "gray cast iron, cast-iron-grey-250",
        "acrylic, pmma",
        "inox, stainless-304",
        "slate, slate",
        "alloy 718, nickel-alloy-718",
    })
    void isFoundByTheNamesOfTheTrade(String text, String id) {
        assertThat(Materials.standard().get(text).id()).isEqualTo(id);
    }

    /** No alias may lead to two materials, and each must lead to its own. */
    @Test
    void everyNameInTheCatalogueLeadsToItsMaterial() {
        Materials standard = Materials.standard();
        for (Material material : standard.all()) {
            assertThat(standard.get(material.id())).isEqualTo(material);
            assertThat(standard.get(material.name())).isEqualTo(material);
            assertThat(material.aliases())
                    .allSatisfy(alias -> assertThat(standard.get(alias)).isEqualTo(material));
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"steel", "glass", "stainless", "wood", "tool steel", "titan"})
    void aNameOfAGroupIsAmbiguous(String text) {
        assertRefused(() -> Materials.standard().get(text), "ambiguous-material");
    }

    /** The list of 1992/93 has 21 numbers that are recalled; every other one states the rule by which it is assumed. */
    @Test
    void everyStandardNumberIsRecalledOrAssumedByAStatedRule() {
        List<Material> all = List.copyOf(Materials.standard().all());
        List<Material> recalled = all.stream()
                .filter(material -> material.evidence().grade() == EvidenceGrade.FROM_MEMORY)
                .toList();

        assertThat(all).hasSize(120);
        assertThat(recalled).hasSize(21).allSatisfy(material -> {
            assertThat(material.evidence().note()).contains("Recalled with");
            assertThat(codes(material)).doesNotContain("assumed-machinability");
        });
        assertThat(all).filteredOn(material -> !recalled.contains(material)).allSatisfy(material -> {
            assertThat(material.evidence().grade()).isEqualTo(EvidenceGrade.ASSUMED);
            assertThat(material.evidence().source().toString()).startsWith("class rule ");
            assertThat(codes(material)).contains("assumed-machinability");
            assertThat(material.relativeUncertainty()).isGreaterThanOrEqualTo(0.15);
        });
    }

    private static List<String> codes(Material material) {
        return material.cautions().stream().map(Caution::code).toList();
    }

    @Test
    void everyStandardMaterialHasDensityAndGroup() {
        assertThat(Materials.standard().all()).allSatisfy(material -> {
            assertThat(Kind.DENSITY.si(material.density().orElseThrow())).isBetween(20.0, 20_000.0);
            assertThat(material.group()).isNotEmpty();
        });
    }

    /** The metals of the list, and what follows for those that only have a modulus: 3860 (E/GPa)^-0.731. */
    @ParameterizedTest
    @ValueSource(strings = {"nickel-alloy-625", "magnesium-az31", "silver", "tungsten", "cobalt-chromium"})
    void numbersByTheRuleOfTheModulusFollowIt(String id) {
        Material metal = Materials.standard().get(id);
        double gigapascals = Kind.PRESSURE.si(metal.youngsModulus().orElseThrow()) / 1e9;

        assertThat(metal.machinabilitySi()).isCloseTo(3860 * Math.pow(gigapascals, -0.731), withinPercentage(0.2));
    }

    /** Recall and spread are two parts: a mild steel is known as surely as it is recalled, a natural stone scatters. */
    @Test
    void recallAndSpreadOfTheMaterialAreKeptApart() {
        Material steel = Materials.standard().get("mild-steel-a36");
        Material granite = Materials.standard().get("granite");

        assertThat(steel.materialSpread()).isZero();
        assertThat(granite.relativeUncertainty()).isEqualTo(0.32);
        assertThat(granite.materialSpread()).isCloseTo(Math.sqrt(0.32 * 0.32 - 0.1 * 0.1), within(1e-12));
    }

    @Test
    void aNumberOfTheShopTakesThePlaceOfTheRule() {
        Material own = Materials.standard().get("brass").withMachinability(125, 0.05, TITANIUM.evidence());

        assertThat(own.cautions()).isEmpty();
        assertThat(own.materialSpread()).isEqualTo(0.05);
        assertThat(own.density()).isPresent();
        assertThat(own.aliases()).contains("brass");
    }

    @Test
    void dangersOfAMaterialAreCautions() {
        assertThat(codes(Materials.standard().get("magnesium-az31"))).contains("material-hazard");
        assertThat(codes(Materials.standard().get("foam-pe"))).contains("water-alone");
    }

    @Test
    void aShopAddsItsOwnMaterials() {
        Materials shop = Materials.standard().with(Material.of("invar-36", 85, 0.2, MaterialClass.DUCTILE));
        Materials fromText = Materials.standard()
                .with(Materials.parse(HEADING + "invar-36,\"Invar, 36 % nickel\",85,0.2,ductile,assumed,our cuts,\n")
                        .all());

        assertThat(shop.get("invar").machinabilitySi()).isEqualTo(85);
        assertThat(fromText.get("invar").name()).isEqualTo("Invar, 36 % nickel");
        assertThat(Materials.standard().all()).hasSize(120);
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
    @ValueSource(strings = {"breeze", "unobtainium", "zz", "ceramix-9000"})
    void materialsThatOnlyShareLettersAreNotSuggested(String text) {
        assertThat(suggestions(Materials.standard(), text)).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"plastics, nylon", "metals, magnesium-az31"})
    void materialsOfTheNamedGroupAreSuggested(String text, String id) {
        assertThat(suggestions(Materials.standard(), text)).contains(id);
    }

    /** Columns beyond the first eight are optional and may stand in any order. */
    @Test
    void aTableMayHaveFurtherColumns() {
        Material own = Materials.parse(HEADING.strip() + ",density_kg_per_m3,aliases\n"
                        + "invar-36,Invar,85,0.2,ductile,assumed,our cuts,,8100,1.3912;FeNi36\n")
                .get("1.3912");

        assertThat(own.id()).isEqualTo("invar-36");
        assertThat(Kind.DENSITY.si(own.density().orElseThrow())).isEqualTo(8100);
        assertRefused(() -> Materials.parse(HEADING.strip() + ",colour\n"), "wrong-columns");
        assertThat(Refusals.of(() -> Materials.parse(
                        HEADING.strip() + ",recall\n" + "invar-36,Invar,85,0.2,ductile,assumed,our cuts,,0.3\n")))
                .isEqualTo("line 2, column 1: recall-above-uncertainty");
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
