package dev.waterjet.calibrate;

import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.millimetresPerMinute;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import dev.waterjet.ValueContract;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.measure.DomainException;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;

class TestCutTest {

    private static final AbrasiveJet JET = CalibrationTest.jet(350, 300);

    @Test
    void isAValue() {
        ValueContract.of(() -> TestCut.graded(JET, millimetres(12), 3, millimetresPerMinute(90)))
                .has("test", TestCut::test, TestCut.Test.GRADED)
                .has("jet", TestCut::jet, JET)
                .has("thickness", TestCut::thickness, millimetres(12))
                .has("index", TestCut::index, 3.0)
                .has("feed", TestCut::feed, millimetresPerMinute(90))
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
                .check();
    }

    @Test
    void impossibleCutsAreRefused() {
        assertThat(quantity(() -> TestCut.groove(JET, millimetres(0), millimetresPerMinute(90))))
                .isEqualTo("depth of the groove");
        assertThat(quantity(() -> TestCut.separated(JET, millimetres(0), millimetresPerMinute(90))))
                .isEqualTo("thickness");
        assertThat(quantity(() -> TestCut.graded(JET, millimetres(9), 0.9, millimetresPerMinute(90))))
                .isEqualTo("quality index");
        TestCut cut = TestCut.separated(JET, millimetres(9), millimetresPerMinute(90));
        assertThat(quantity(() -> cut.withRelativeDeviation(-0.01))).isEqualTo("relative deviation");
    }

    private static String quantity(ThrowingCallable call) {
        return catchThrowableOfType(DomainException.class, call).quantity();
    }
}
