package dev.waterjet.calibrate;

import dev.waterjet.ValueContract;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.measure.DomainException;
import org.junit.jupiter.api.Test;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.millimetresPerMinute;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

class TestCutTest {

    private static final AbrasiveJet JET = CalibrationTest.jet(350, 300);

    @Test
    void isAValue() {
        ValueContract.of(() -> TestCut.graded(JET, millimetres(12), 3, millimetresPerMinute(90)))
                .tells("test", TestCut::test, TestCut.Test.GRADED)
                .tells("jet", TestCut::jet, JET)
                .tells("thickness", TestCut::thicknessSi, 0.012)
                .tells("index", TestCut::index, 3.0)
                .tells("feed", TestCut::feedSi, 0.0015)
                .change("relative deviation", cut -> cut.withRelativeDeviation(0.02), TestCut::relativeDeviation, 0.02)
                .change("label", cut -> cut.withLabel("north door"), TestCut::label, "north door")
                .differs(
                        "jet",
                        TestCut.graded(CalibrationTest.jet(360, 300), millimetres(12), 3, millimetresPerMinute(90)))
                .differs("thickness", TestCut.graded(JET, millimetres(13), 3, millimetresPerMinute(90)))
                .differs("index", TestCut.graded(JET, millimetres(12), 2, millimetresPerMinute(90)))
                .differs("feed", TestCut.graded(JET, millimetres(12), 3, millimetresPerMinute(91)))
                .differs("test", TestCut.separated(JET, millimetres(12), millimetresPerMinute(90)))
                .differs("groove", TestCut.groove(JET, millimetres(12), millimetresPerMinute(90)))
                .says("graded of 12 mm at 90 mm/min")
                .check();
    }

    @Test
    void impossibleCutsAreRefusedInTheirOwnWords() {
        assertThatThrownBy(() -> TestCut.groove(JET, millimetres(0), millimetresPerMinute(90)))
                .isInstanceOf(DomainException.class)
                .hasMessage("depth of the groove is 0 mm; it must be above 0 mm");
        assertThatThrownBy(() -> TestCut.separated(JET, millimetres(0), millimetresPerMinute(90)))
                .hasMessage("thickness is 0 mm; it must be above 0 mm");
        assertThatThrownBy(() -> TestCut.graded(JET, millimetres(9), 0.9, millimetresPerMinute(90)))
                .hasMessageContaining("quality index is 0.9; it must be at least 1");
        assertThatThrownBy(() -> TestCut.separated(JET, millimetres(9), millimetresPerMinute(90))
                        .withRelativeDeviation(0))
                .hasMessageContaining("relative deviation is 0 %; it must be above 0 %");
    }
}
