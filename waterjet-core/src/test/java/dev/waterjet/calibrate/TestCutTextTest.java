package dev.waterjet.calibrate;

import dev.waterjet.measure.TextException;
import java.util.List;
import org.junit.jupiter.api.Test;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.millimetresPerMinute;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

class TestCutTextTest {

    private static final String HEADER =
            "test,thickness_mm,feed [mm/min],pressure_MPa,orifice_mm,tube_mm,abrasive_flow_g_per_min";

    @Test
    void cutsAreReadInTheUnitsOfTheHeader() {
        List<TestCut> cuts = TestCutText.parse("""
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

        assertThat(TestCutText.parse(TestCutText.print(cuts))).isEqualTo(cuts);
    }

    @Test
    void aTubeIsEightyBoresLongUnlessTold() {
        String row = "\nseparation,10,100,380,0.3,0.9,300";

        assertThat(TestCutText.parse(HEADER + row).get(0).jet().head().tube().lengthSi())
                .isCloseTo(0.072, within(1e-15));
        TestCut told = TestCutText.parse(HEADER + ",tube_length_mm,discharge_coefficient" + row + ",76,0.7")
                .get(0);
        assertThat(told.jet().head().tube().lengthSi()).isCloseTo(0.076, within(1e-15));
        assertThat(told.jet().head().tube().boreSi()).isCloseTo(0.0009, within(1e-15));
        assertThat(told.jet().head().orifice().dischargeCoefficient().si()).isEqualTo(0.7);
        assertThat(TestCutText.parse(TestCutText.print(List.of(told)))).containsExactly(told);
    }

    /** The coefficient of an orifice that nobody measured is the library's own and is left out. */
    @Test
    void aDischargeCoefficientIsPrintedWhereItWasTold() {
        TestCut usual = TestCut.separated(CalibrationTest.jet(380, 317), millimetres(7), millimetresPerMinute(200));

        assertThat(TestCutText.print(List.of(usual)).lines().toList().get(1)).contains(",3.0E-4,,9.0E-4,");
        assertThat(TestCutText.parse(TestCutText.print(List.of(usual)))
                        .get(0)
                        .jet()
                        .head()
                        .orifice())
                .isEqualTo(usual.jet().head().orifice());
    }

    @Test
    void whatIsMissingIsAskedForInItsPlace() {
        assertThatThrownBy(() -> TestCutText.parse(HEADER + "\nseparation,10,,380,0.3,0.9,300\n"))
                .hasMessage("line 2, column 15: there is no feed");
        assertThatThrownBy(() -> TestCutText.parse(HEADER + ",index\ndepth,10,100,380,0.3,0.9,300,2\n"))
                .hasMessage("line 2, column 30: a depth test has no index other than 1");
        assertThatThrownBy(() -> TestCutText.parse(HEADER + ",index,index\n"))
                .hasMessageContaining("the column index stands twice");
    }

    @Test
    void faultsNameTheirPlace() {
        assertThatThrownBy(() -> TestCutText.parse(""))
                .isInstanceOf(TextException.class)
                .hasMessageContaining("the file of test cuts is empty");
        assertThatThrownBy(() -> TestCutText.parse("test,thickness,feed_mm_per_min\n"))
                .hasMessageContaining("line 1, column 6: the column thickness has no unit: write it as thickness_m");
        assertThatThrownBy(() -> TestCutText.parse("test,thickness_mm\n"))
                .hasMessageContaining("there is no column feed");
        assertThatThrownBy(() -> TestCutText.parse(HEADER.replace("pressure_MPa", "pressure_kg")))
                .hasMessageContaining("line 1, column 33")
                .hasMessageContaining("has a unit that is not one of pressure");
        assertThatThrownBy(() -> TestCutText.parse(HEADER + ",colour\n"))
                .hasMessageContaining("there is no column \"colour\"");
        assertThatThrownBy(() -> TestCutText.parse(HEADER + "\nseparation,10,fast,380,0.3,0.9,300\n"))
                .hasMessageContaining("line 2, column 15: feed \"fast\" is no number");
        assertThatThrownBy(() -> TestCutText.parse(HEADER + "\nguess,10,100,380,0.3,0.9,300\n"))
                .hasMessageContaining("test \"guess\" is none of separation, depth, graded");
        assertThatThrownBy(() -> TestCutText.parse(HEADER + "\nseparation,10,100,380,0.9,0.3,300\n"))
                .hasMessageContaining("line 2, column 1")
                .hasMessageContaining("the water would strike the tube");
        assertThatThrownBy(() -> TestCutText.parse(HEADER + "\nseparation,10,100\n"))
                .hasMessageContaining("the row has 3 cells, the header 7");
    }
}
