package dev.waterjet.calibrate;

import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.millimetresPerMinute;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.entry;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.Refusals;
import dev.waterjet.jet.Abrasive;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.Mesh;
import dev.waterjet.measure.Kind;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TestCutTextTest {

    private static final String HEADER =
            "test,thickness_mm,feed [mm/min],pressure_MPa,orifice_mm,tube_mm,abrasive_flow_g_per_min";

    @Test
    void cutsAreReadInTheUnitsOfTheHeader() {
        List<TestCut> cuts = TestCut.parse("""
            # cuts of a morning
            label,test,thickness_in,index,feed_in_per_min,pressure_ksi,orifice_in,tube_in,abrasive_flow_lb_per_min
            first,separation,0.5,,20,55,0.014,0.040,1.2
            "second, by eye",graded,0.5,3,6,55,0.014,0.040,1.2
            """);

        assertThat(cuts).hasSize(2);
        assertThat(cuts.get(0).thicknessSi()).isCloseTo(0.0127, within(1e-15));
        assertThat(cuts.get(0).feedSi()).isCloseTo(20 * 0.0254 / 60, within(1e-15));
        assertThat(cuts.get(0).jet().water().pressureSi()).isCloseTo(55e3 * 6894.757293168, within(1e-3));
        assertThat(cuts.get(1).label()).isEqualTo("second, by eye");
        assertThat(cuts.get(1).index()).isEqualTo(3);
        assertThat(cuts.get(1).test()).isEqualTo(TestCut.Test.GRADED);
    }

    @Test
    void whatIsPrintedIsReadBackToTheBit() {
        List<TestCut> cuts = List.of(
                TestCut.separated(CalibrationTest.jet(380, 317), millimetres(7.3), millimetresPerMinute(213))
                        .withLabel("a \"quoted\" label, with a comma"),
                TestCut.groove(CalibrationTest.jet(290, 250), millimetres(3.1), millimetresPerMinute(900))
                        .withRelativeDeviation(0.02),
                TestCut.graded(CalibrationTest.jet(380, 317), millimetres(12), 3, millimetresPerMinute(80)));

        assertThat(TestCut.parse(TestCut.print(cuts))).isEqualTo(cuts);
    }

    @Test
    void noCutsAreReadBackAsNone() {
        assertThat(TestCut.parse(TestCut.print(List.of()))).isEmpty();
    }

    @Test
    void aTubeIsEightyBoresLongUnlessItsLengthIsGiven() {
        String row = "\nseparation,10,100,380,0.3,0.9,300";

        assertThat(TestCut.parse(HEADER + row).get(0).jet().head().tube().lengthSi())
                .isCloseTo(0.072, within(1e-15));
        TestCut given = TestCut.parse(HEADER + ",tube_length_mm,discharge_coefficient" + row + ",76,0.7")
                .get(0);
        assertThat(given.jet().head().tube().lengthSi()).isCloseTo(0.076, within(1e-15));
        assertThat(given.jet().head().tube().boreSi()).isCloseTo(0.0009, within(1e-15));
        assertThat(given.jet().head().orifice().dischargeCoefficient().si()).isEqualTo(0.7);
        assertThat(TestCut.parse(TestCut.print(List.of(given)))).containsExactly(given);
    }

    /** The default coefficient of an orifice is left out. */
    @Test
    void aDischargeCoefficientIsPrintedWhereItWasGiven() {
        TestCut plain = TestCut.separated(CalibrationTest.jet(380, 317), millimetres(7), millimetresPerMinute(200));

        assertThat(TestCut.print(List.of(plain)).lines().toList().get(1)).contains(",3.0E-4,,9.0E-4,");
        assertThat(TestCut.parse(TestCut.print(List.of(plain)))
                        .get(0)
                        .jet()
                        .head()
                        .orifice())
                .isEqualTo(plain.jet().head().orifice());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "''                                                       | line 1, column 1: empty-test-cuts",
                "test,thickness,feed_mm_per_min                           | line 1, column 6: column-without-unit",
                "test~thickness_mm~feed_mm_per_min                        | line 1, column 1: semicolons-between-cells",
                "test,thickness_mm                                        | line 1, column 6: missing-column",
                "HEADER,;separation,10,100,380,0.3,0.9,300,              | line 1, column 89: unnamed-column",
                "HEADER,index,index                                       | line 1, column 95: repeated-column",
                "HEADER;separation,10,,380,0.3,0.9,300                    | line 2, column 15: empty-cell",
                "HEADER;separation,10,fast,380,0.3,0.9,300                | line 2, column 15: not-a-number",
                "HEADER;guess,10,100,380,0.3,0.9,300                      | line 2, column 1: unknown-test",
                "HEADER;separation,10,100                                 | line 2, column 15: unequal-cells",
                "HEADER,index;depth,10,100,380,0.3,0.9,300,2              | line 2, column 30: column-not-allowed",
            })
    void anErrorHasItsPlaceAndCode(String text, String refusal) {
        String csv = text.replace("HEADER", HEADER).replace(';', '\n').replace('~', ';');

        assertThat(Refusals.of(() -> TestCut.parse(csv))).isEqualTo(refusal);
    }

    @Test
    void anImpossibleJetIsRefusedInItsRow() {
        assertThat(Refusals.of(() -> TestCut.parse(HEADER + "\nseparation,10,100,380,0.9,0.3,300\n")))
                .startsWith("line 2, column 1: ");
        assertThat(Refusals.of(() -> TestCut.parse(HEADER.replace("pressure_MPa", "pressure_kg"))))
                .startsWith("line 1, column 33: ");
    }

    private static final String ROW = ",10,100,380,0.3,0.9,300";

    private static TestCut one(String more, String test, String cells) {
        return TestCut.parse(HEADER + more + "\n" + test + ROW + cells).get(0);
    }

    /** A separation with a failed feed rate is an interval, one with yes or no a trial. */
    @Test
    void whatASeparationSaysIsItsTest() {
        TestCut plain = one(",failed_feed_mm_per_min,separated", "separation", ",,");
        TestCut interval = one(",failed_feed_mm_per_min,separated", "separation", ",110,");
        TestCut open = one(",failed_feed_mm_per_min,separated", "separation", ",,yes");
        TestCut closed = one(",separated", "trial", ",no");
        TestCut upper = one(",feed_upper_mm_per_min", "interval", ",120");

        assertThat(plain.test()).isEqualTo(TestCut.Test.SEPARATION);
        assertThat(interval.test()).isEqualTo(TestCut.Test.INTERVAL);
        assertThat(Kind.SPEED.si(interval.failedFeed().orElseThrow())).isCloseTo(0.11 / 60, within(1e-15));
        assertThat(Kind.SPEED.si(upper.failedFeed().orElseThrow())).isCloseTo(0.12 / 60, within(1e-15));
        assertThat(plain.failedFeed()).isEmpty();
        assertThat(open.test()).isEqualTo(TestCut.Test.TRIAL);
        assertThat(open.isSeparated()).isTrue();
        assertThat(closed.isSeparated()).isFalse();
        assertThat(plain.isMeasured()).isTrue();
        assertThat(interval.isMeasured()).isFalse();
        assertThat(open.isMeasured()).isFalse();
    }

    @Test
    void deviationsMeshAndOwnColumnsAreRead() {
        TestCut cut = one(
                ",relative_deviation,reading_deviation_mm,mesh,stand_off_mm,plate,morning of,thickness_upper_mm",
                "depth",
                ",0.03,0.2,120,3,P7,May,12");

        assertThat(cut.relativeDeviation()).isEqualTo(0.03);
        assertThat(cut.readingDeviationSi()).isCloseTo(0.2e-3, within(1e-15));
        assertThat(cut.jet().abrasive()).isEqualTo(Abrasive.garnet(Mesh.of(120)));
        assertThat(cut.jet().standOffSi()).isCloseTo(0.003, within(1e-15));
        assertThat(cut.attributes()).containsExactly(entry("plate", "P7"), entry("morning of", "May"));
        assertThat(cut.plate()).isEqualTo("P7");
        assertThat(cut.upperThicknessSi()).isCloseTo(0.012, within(1e-15));
        assertThat(cut.isMeasured()).isFalse();
        assertThat(cut.isSeparated()).isFalse();
        assertThat(TestCut.parse(TestCut.print(List.of(cut)))).containsExactly(cut);
        TestCut graded = one(",index,index_upper", "graded", ",2,3");
        assertThat(graded.upperIndex()).isEqualTo(3);
        assertThat(graded.isMeasured()).isFalse();
        assertThat(one(",index,index_upper", "graded", ",2,").isMeasured()).isTrue();
        assertThat(one(",index", "separation", ",1").index()).isEqualTo(1);
    }

    /** A column is written where a cut has it, and left empty for the others. */
    @Test
    void everyKindOfCutIsPrintedAndReadBack() {
        AbrasiveJet jet = CalibrationTest.jet(380, 317);
        AbrasiveJet other = jet.withHead(jet.head().withStandOff(millimetres(4)));
        var feed = millimetresPerMinute(213);
        List<TestCut> cuts = List.of(
                TestCut.between(jet, millimetres(7), feed, millimetresPerMinute(230)),
                TestCut.trial(other, millimetres(7), feed, true).withPlate("P1"),
                TestCut.trial(jet, millimetres(7), feed, false).withAttribute("lot", "4"),
                TestCut.grooveBetween(jet, millimetres(5), millimetres(6), feed).withReadingDeviation(millimetres(0.1)),
                TestCut.gradedBetween(jet, millimetres(5), 2, 3, feed));

        assertThat(TestCut.print(cuts).lines().findFirst().orElseThrow())
                .contains(
                        "failed_feed", "separated", "thickness_upper", "index_upper", "stand_off", "reading_deviation")
                .endsWith("label,plate,lot");
        assertThat(TestCut.print(cuts.subList(2, 3)).lines().findFirst().orElseThrow())
                .contains("separated")
                .doesNotContain("failed_feed", "thickness_upper", "index_upper", "stand_off", "mesh", "reading");
        List<TestCut> read = TestCut.parse(TestCut.print(cuts));
        for (int i = 0; i < cuts.size(); i++) {
            TestCut cut = read.get(i);
            assertThat(cut.test()).isEqualTo(cuts.get(i).test());
            assertThat(cut.isSeparated()).isEqualTo(cuts.get(i).isSeparated());
            assertThat(cut.failedFeedSi()).isEqualTo(cuts.get(i).failedFeedSi());
            assertThat(cut.upperThicknessSi()).isEqualTo(cuts.get(i).upperThicknessSi());
            assertThat(cut.upperIndex()).isEqualTo(cuts.get(i).upperIndex());
            assertThat(cut.readingDeviation()).isEqualTo(cuts.get(i).readingDeviation());
            assertThat(cut.plate()).isEqualTo(cuts.get(i).plate());
            assertThat(cut.jet()).isEqualTo(cuts.get(i).jet());
        }
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "index_upper;separation                 | 2        | column-not-allowed",
                "thickness_upper_mm;separation          | 12       | column-not-allowed",
                "failed_feed_mm_per_min;depth           | 120      | column-not-allowed",
                "feed_upper_mm_per_min;graded           | 120      | column-not-allowed",
                "separated;interval                     | yes      | column-not-allowed",
                "separated;depth                        | yes      | column-not-allowed",
                "separated;trial                        | perhaps  | neither-yes-nor-no",
                "failed_feed_mm_per_min;interval        | ''       | empty-cell",
                "failed_feed_mm_per_min;interval        | 90       | must-be-above",
                "relative_deviation;separation          | -1       | must-be-at-least",
            })
    void aCellThatItsTestDoesNotTakeIsRefused(String column, String cell, String code) {
        String[] parts = column.split(";", -1);

        assertThat(Refusals.of(() -> one("," + parts[0], parts[1], "," + cell)))
                .startsWith("line 2, column ")
                .endsWith(": " + code);
    }

    @Test
    void aTrialWithAFailedFeedRateIsRefused() {
        assertThat(Refusals.of(() -> one(",failed_feed_mm_per_min,separated", "separation", ",120,yes")))
                .endsWith("column-not-allowed");
    }

    /** An attribute that is given again is replaced in its place. */
    @Test
    void attributesKeepTheirOrder() {
        TestCut cut = TestCut.separated(CalibrationTest.jet(380, 317), millimetres(7), millimetresPerMinute(200))
                .withAttribute("lot", "1")
                .withPlate("P1")
                .withAttribute("lot", "2");

        assertThat(cut.attributes()).containsExactly(entry("lot", "2"), entry("plate", "P1"));
        assertThat(cut.toString()).isEqualTo("separation of 7 mm at 200 mm/min");
        assertThat(cut.describe())
                .containsEntry("separated", true)
                .containsEntry("test", "separation")
                .containsEntry("relative_deviation", 0.0)
                .containsEntry("thickness_m", 0.007);
        // a surface judged by eye is uncertain by 10 %, unless its two ends hold that
        assertThat(one(",index", "graded", ",3").relativeDeviation()).isEqualTo(0.1);
        assertThat(one(",index,index_upper", "graded", ",2,3").relativeDeviation())
                .isZero();
        assertThat(cut.relativeDeviation()).isZero();
    }
}
