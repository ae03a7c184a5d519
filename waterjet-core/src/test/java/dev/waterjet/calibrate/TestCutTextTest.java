package dev.waterjet.calibrate;

import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.millimetresPerMinute;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.Refusals;
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
}
