package dev.waterjet.material;

import static dev.waterjet.Refusals.assertRefused;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.Refusals;
import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import dev.waterjet.measure.Kind;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Properties that a catalogue states of a material beside its number, those of layers, and the cautions that follow. */
class MaterialFactsTest {

    private static final String COLUMNS = "id,name,machinability,relative_uncertainty,trait,grade,source,note";
    private static final String FURTHER = ",hazard,water_alone,strength_uncertainty,strength_mpa,young_gpa,"
            + "density_kg_per_m3,rule,recall,aliases,group\n";
    private static final Evidence CUTS = Evidence.of(EvidenceGrade.FITTED, Source.of("six cuts on Hollow Ridge"));

    /** One material by its further cells, in the order of {@link #FURTHER}. */
    private static Material parsed(double uncertainty, String cells) {
        return Materials.parse(COLUMNS + FURTHER + "ridge-slab,Slab,200," + uncertainty + ",brittle,assumed,ours,,"
                        + cells + "\n")
                .get("ridge-slab");
    }

    private static List<String> codes(Material material) {
        return material.cautions().stream().map(Caution::code).toList();
    }

    /** The columns stand in reverse. */
    @Test
    void everyColumnIsReadInItsUnit() {
        Material slab =
                parsed(0.5, "dusts badly,thin,0.2,55,70,2600,STONE,0.3, slab of the ridge ;; Schiefer ,natural stone");

        assertThat(slab.group()).isEqualTo("natural stone");
        assertThat(slab.aliases()).containsExactly("slab of the ridge", "Schiefer");
        assertThat(slab.materialSpread()).isEqualTo(0.4, within(1e-12));
        assertThat(slab.density().map(Kind.DENSITY::si)).contains(2600.0);
        assertThat(slab.youngsModulus().map(Kind.PRESSURE::si)).contains(70e9);
        assertThat(slab.strength().orElseThrow().si()).isEqualTo(55e6);
        assertThat(slab.strength().orElseThrow().relativeUncertainty()).isEqualTo(0.2, within(1e-12));
        assertThat(slab.facts().rule()).isEqualTo("STONE");
        assertThat(slab.facts().waterAlone()).isEqualTo("thin");
        assertThat(slab.facts().hazard()).isEqualTo("dusts badly");
        assertThat(slab.describe())
                .containsEntry("density_kg_per_m3", 2600.0)
                .containsEntry("youngs_modulus_Pa", 70e9)
                .containsEntry("group", "natural stone")
                .containsEntry("relative_uncertainty", 0.5)
                .containsKeys("strength", "material_spread", "cautions", "evidence", "aliases", "class");
    }

    @Test
    void anEmptyCellStatesNothing() {
        Material slab = parsed(0.1, ",,,,,,,,,");

        assertThat(slab.group()).isEmpty();
        assertThat(slab.aliases()).isEmpty();
        assertThat(slab.materialSpread()).isEqualTo(0.1, within(1e-15));
        assertThat(slab.density()).isEmpty();
        assertThat(slab.youngsModulus()).isEmpty();
        assertThat(slab.strength()).isEmpty();
        assertThat(slab.cautions()).isEmpty();
        assertThat(slab.describe()).doesNotContainKeys("density_kg_per_m3", "youngs_modulus_Pa", "strength");
        assertThat(slab.facts()).isEqualTo(MaterialFacts.NONE);
    }

    @ParameterizedTest
    @CsvSource({
        "',,,,,0,,,,', density of the material",
        "',,,,-70,,,,,', Young's modulus",
        "',,,0,,,,,,', strength of the material",
        "',,-0.1,,,,,,,', relative uncertainty of the strength",
        "',,,,,,,-0.1,,', uncertainty of recall"
    })
    void impossiblePropertiesAreRefused(String cells, String quantity) {
        String code = quantity.contains("uncertainty") ? "must-be-at-least" : "must-be-above";
        assertThat(Refusals.of(() -> parsed(0.1, cells))).isEqualTo("line 2, column 1: " + code);
        assertRefused(
                () -> new MaterialFacts(
                        "",
                        List.of(),
                        quantity.contains("recall") ? -1 : 0,
                        "",
                        quantity.contains("density") ? 0.0 : null,
                        quantity.contains("modulus") ? -1.0 : null,
                        quantity.startsWith("strength") ? 0.0 : null,
                        quantity.contains("of the strength") ? -1 : 0,
                        "",
                        ""),
                code,
                quantity,
                0);
    }

    @Test
    void recallIsAtMostTheWholeUncertainty() {
        assertThat(parsed(0.3, ",,,,,,,0.3,,").materialSpread()).isZero();
        assertThat(Refusals.of(() -> parsed(0.3, ",,,,,,,0.31,,")))
                .isEqualTo("line 2, column 1: recall-above-uncertainty");
        assertThat(Refusals.of(() -> parsed(0.3, ",,,,steel,,,,,"))).isEqualTo("line 2, column 51: not-a-number");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "0.1  | ,,,,,,,,, | ''",
                "0.25 | ,,,,,,,,, | unsure-machinability",
                "0.1  | ,,,,,,STONE,,, | assumed-machinability",
                "0.9  | ,,,,,,STONE,,, | assumed-machinability",
                "0.1  | ,yes,,,,,,,, | water-alone",
                "0.1  | ,thin,,,,,,,, | ''",
                "0.1  | burns,,,,,,,,, | material-hazard",
                "0.3  | burns,yes,,,,,RUBBER,,, | assumed-machinability water-alone material-hazard",
                "0.3  | burns,yes,,,,,,,, | unsure-machinability water-alone material-hazard"
            })
    void cautionsFollowWhatIsStated(double uncertainty, String cells, String expected) {
        List<String> words = expected.isEmpty() ? List.of() : List.of(expected.split(" ", -1));
        assertThat(codes(parsed(uncertainty, cells))).isEqualTo(words);
    }

    /** A number of the shop takes the class rule away, and nothing else that is said of the material. */
    @Test
    void aNumberOfTheShopKeepsTheOtherCautions() {
        Material rubber = parsed(0.8, "burns,yes,,,,,RUBBER,0.5,,");

        assertThat(codes(rubber.withMachinability(3000, 0.05, CUTS))).containsExactly("water-alone", "material-hazard");
        assertThat(codes(Materials.standard().get("rubber-nbr").withMachinability(3000, 0.05, CUTS)))
                .containsExactly("water-alone");
        assertThat(rubber.withMachinability(3000, 0.05, CUTS).materialSpread()).isEqualTo(0.05);
        assertThat(rubber.withDensity(Kind.DENSITY.of(900))
                        .withAliases(List.of("x"))
                        .materialSpread())
                .isEqualTo(Math.sqrt(0.64 - 0.25), within(1e-12));
        Map<String, Object> stated = rubber.cautions().get(0).message().parameters();
        // exp(1.96 x 0.8) = 4.797
        assertThat(stated)
                .containsEntry("factor", 4.8)
                .containsEntry("rule", "RUBBER")
                .containsEntry("material", "Slab");
        assertThat(rubber.cautions().get(2).message().parameters()).containsEntry("hazard", "burns");
    }

    private static final Materials CATALOGUE =
            Materials.parse(COLUMNS + ",density_kg_per_m3,strength_mpa,strength_uncertainty\n"
                    + "ductile,Ductile,100,0.1,ductile,assumed,s,,7800,400,0.1\n"
                    + "ductile-unknown,Ductile too,120,0.2,ductile,assumed,s,,8000,,\n"
                    + "soft,Soft,900,0.3,soft,assumed,s,,1200,30,\n"
                    + "brittle,Brittle,300,0.1,brittle,assumed,s,,2500,60,\n"
                    + "brittle-weak,Brittle too,350,0.2,brittle,assumed,s,,2600,35,\n"
                    + "laminated,Laminated,500,0.4,laminated,assumed,s,,1600,50,\n"
                    + "laminated-unknown,Laminated too,520,0.2,laminated,assumed,s,,1500,,\n"
                    + "brittle-light,Light,200,0.2,brittle,assumed,s,,,80,\n");

    static IntStream seeds() {
        return IntStream.range(0, 50);
    }

    /** Layers drawn at random against the definitions, property by property. */
    @ParameterizedTest
    @MethodSource("seeds")
    void layersHaveTheirCommonProperties(int seed) {
        SplittableRandom random = new SplittableRandom(seed);
        List<Material> all = List.copyOf(CATALOGUE.all());
        List<Workpiece> layers = new ArrayList<>();
        int count = 2 + random.nextInt(3);
        for (int i = 0; i < count; i++) {
            layers.add(Workpiece.of(all.get(random.nextInt(all.size())), millimetres(1 + random.nextInt(9))));
        }
        Set<Material> different = new LinkedHashSet<>();
        layers.forEach(layer -> different.add(layer.material()));
        Material common = Workpiece.layers(layers).material();
        if (different.size() == 1) {
            assertThat(common).isSameAs(layers.get(0).material());
            return;
        }
        double thickness = 0;
        double time = 0;
        double spread = 0;
        double mass = 0;
        double strength = Double.POSITIVE_INFINITY;
        int rank = 0;
        List<MaterialClass> ranks = Arrays.asList(
                MaterialClass.DUCTILE, MaterialClass.SOFT, MaterialClass.BRITTLE, MaterialClass.LAMINATED);
        for (Workpiece layer : layers) {
            Material material = layer.material();
            double share = layer.thicknessSi() / material.machinabilitySi();
            thickness += layer.thicknessSi();
            time += share;
            spread += share * material.relativeUncertainty();
            mass += layer.thicknessSi()
                    * material.density().map(Kind.DENSITY::si).orElse(Double.NaN);
            int own = ranks.indexOf(material.materialClass());
            rank = Math.max(rank, own);
            if (own >= 2) {
                strength = Math.min(
                        strength, material.strength().map(known -> known.si()).orElse(Double.NaN));
            }
        }
        assertThat(common.machinabilitySi()).isEqualTo(thickness / time, within(1e-9));
        assertThat(common.relativeUncertainty()).isEqualTo(spread / time, within(1e-12));
        assertThat(common.materialClass()).isEqualTo(ranks.get(rank));
        assertThat(common.density().isPresent()).isEqualTo(!Double.isNaN(mass));
        assertThat(common.density().map(Kind.DENSITY::si).orElse(0.0))
                .isEqualTo(Double.isNaN(mass) ? 0 : mass / thickness, within(1e-9));
        boolean isKnown = !Double.isNaN(strength) && strength < Double.POSITIVE_INFINITY;
        assertThat(common.strength().map(known -> known.si()).orElse(0.0)).isEqualTo(isKnown ? strength : 0);
        assertThat(common.name())
                .isEqualTo("layers of "
                        + String.join(
                                " and ", different.stream().map(Material::name).toList()));
    }

    @Test
    void layersOfLayersAreLayers() {
        Workpiece ductile = Workpiece.of(CATALOGUE.get("ductile"), millimetres(2));
        Workpiece soft = Workpiece.of(CATALOGUE.get("soft"), millimetres(3));
        Workpiece nested = Workpiece.layers(List.of(Workpiece.layers(List.of(soft, ductile)), ductile));

        assertThat(nested.layers()).containsExactly(soft, ductile, ductile);
        assertThat(nested).hasToString("7 mm of 3 layers");
        assertThat(nested.describe())
                .containsKeys("material", "layers")
                .containsEntry("thickness_m", nested.thicknessSi());
        assertThat(ductile.describe()).doesNotContainKey("layers");
        assertThat(ductile.cautions()).isEmpty();
        assertThat(nested.cautions()).extracting(Caution::code).containsExactly("stack", "unsure-machinability");
        assertThat(Workpiece.sheets(ductile, 2).cautions())
                .extracting(Caution::code)
                .containsExactly("stack");
        assertThat(ductile.hasSeveralMaterials()).isFalse();
        assertThat(Workpiece.sheets(nested, 2).layers()).hasSize(6);
        assertRefused(() -> nested.withThickness(millimetres(0)), "must-be-above", "thickness", 0);
        Workpiece fifty = nested.withThickness(millimetres(50));
        assertThat(Objects.requireNonNull(fifty.layers().get(0)).thicknessSi()).isEqualTo(0.15 / 7, within(1e-12));
    }

    @Test
    void aRepeatedIdAndAFaultyHeadingHaveTheirPlace() {
        String row = "slab,Slab,200,0.1,brittle,assumed,ours,\n";
        assertThat(Refusals.of(() -> Materials.parse(COLUMNS + "\n" + row + "# once more\n" + row)))
                .isEqualTo("line 4, column 1: repeated-material-id");
        assertThat(Refusals.of(() -> Materials.parse("# ours\n\nname,id\n")))
                .isEqualTo("line 3, column 1: wrong-columns");
        assertThat(Refusals.of(() -> Materials.parse(""))).isEqualTo("line 1, column 1: wrong-columns");
        assertThat(Refusals.of(() -> Materials.parse(COLUMNS + ",rule,rule\n")))
                .isEqualTo("line 1, column 1: wrong-columns");
        assertThat(Refusals.of(() -> Materials.parse(COLUMNS.replace("id,name", "name,id") + "\n")))
                .isEqualTo("line 1, column 1: wrong-columns");
        assertThat(Materials.parse(COLUMNS + "\n").all()).isEmpty();
        var refusal =
                assertRefused(() -> Materials.parse(COLUMNS + "\n" + row.replace("ours,", "ours")), "wrong-cell-count");
        assertThat(refusal.parameters()).containsEntry("cells", 7L).containsEntry("columns", 8L);
        assertThat(assertRefused(
                                () -> Materials.parse(COLUMNS + "\n" + row.replace("brittle", "hard")), "unknown-value")
                        .parameters())
                .containsEntry("column", "trait")
                .containsEntry("value", "hard")
                .containsEntry("known", "ductile, brittle, laminated, soft");
        assertThat(Materials.parse(COLUMNS + "\n" + row.replace("assumed", "Common_Practice"))
                        .get("slab")
                        .evidence()
                        .grade())
                .isEqualTo(EvidenceGrade.COMMON_PRACTICE);
    }
}
