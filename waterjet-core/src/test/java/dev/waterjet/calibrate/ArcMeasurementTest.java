package dev.waterjet.calibrate;

import static dev.waterjet.measure.Measures.inches;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.Refusals;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.kerf.LagGeometry;
import dev.waterjet.kerf.LagModel;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Discs and holes measured at both sides, and the lag that follows from them. */
class ArcMeasurementTest {

    private static final double[] RADII_MM = {4, 6, 10, 5, 8};
    private static final double[] READING_MM = {0.004, -0.003, 0.002, 0.003, -0.005};

    /** Arcs in steel of 25 mm at three times the thickness, with a lag of 2.5 mm, read to some micrometres. */
    private static List<ArcMeasurement> arcs(double kappa, double lagMm, double readings) {
        List<ArcMeasurement> arcs = new ArrayList<>();
        for (int i = 0; i < RADII_MM.length; i++) {
            double r = RADII_MM[i];
            double outwards = kappa > 0 ? Math.sqrt(r * r + lagMm * lagMm) - r : Math.sqrt(r * r - lagMm * lagMm) - r;
            double shift = kappa == 0 ? 0 : outwards;
            arcs.add(ArcMeasurement.of(millimetres(25), millimetres(75), millimetres(r))
                    .withShift(millimetres(shift + readings * READING_MM[i])));
        }
        return arcs;
    }

    /** c = L H/h^2: a lag of 2.5 mm in 25 mm at a separation depth of 75 mm is c = 0.3, by hand. */
    @ParameterizedTest
    @CsvSource({"1, TANGENT", "-1, TRACTRIX"})
    void shiftsGiveTheGeometryAndTheCoefficient(double kappa, LagGeometry geometry) {
        ArcMeasurement.Result exact = ArcMeasurement.fit(arcs(kappa, 2.5, 0));
        ArcMeasurement.Result read = ArcMeasurement.fit(arcs(kappa, 2.5, 1));

        assertThat(exact.geometry()).isEqualTo(geometry);
        assertThat(exact.lag().model().coefficient()).isCloseTo(0.3, within(1e-9));
        assertThat(read.geometry()).isEqualTo(geometry);
        LagModel model = read.lag().model();
        assertThat(model.coefficient()).isCloseTo(0.3, within(0.005));
        assertThat(model.relativeUncertainty()).isBetween(0.002, 0.05);
        assertThat(model.evidence().grade()).isEqualTo(EvidenceGrade.FITTED);
    }

    @Test
    void moreScatterMakesALessCertainModel() {
        assertThat(ArcMeasurement.fit(arcs(1, 2.5, 6)).lag().model().relativeUncertainty())
                .isGreaterThan(
                        3 * ArcMeasurement.fit(arcs(1, 2.5, 1)).lag().model().relativeUncertainty());
    }

    @Test
    void arcsWithoutAShiftTellNoLag() {
        assertThat(Refusals.of(() -> ArcMeasurement.fit(arcs(0, 2.5, 1)))).isEqualTo("arcs-without-lag");
        assertThat(Refusals.of(() -> ArcMeasurement.fit(arcs(0, 2.5, 0)))).isEqualTo("arcs-without-lag");
        assertThat(Refusals.of(() -> ArcMeasurement.fit(arcs(1, 2.5, 1).subList(0, 2))))
                .isEqualTo("too-few-arcs");
    }

    @Test
    void lengthsAreInAnyUnit() {
        ArcMeasurement metric = ArcMeasurement.of(millimetres(25.4), millimetres(76.2), millimetres(5.08));

        assertThat(ArcMeasurement.of(inches(1), inches(3), inches(0.2)).toString())
                .isEqualTo(metric.toString());
    }

    @Test
    void lengthsOutOfTheirRangeAreRefused() {
        ArcMeasurement arc = ArcMeasurement.of(millimetres(25), millimetres(75), millimetres(5));

        assertThat(List.of(
                        Refusals.of(() -> ArcMeasurement.of(millimetres(0), millimetres(75), millimetres(5))),
                        Refusals.of(() -> ArcMeasurement.of(millimetres(25), millimetres(20), millimetres(5))),
                        Refusals.of(() -> ArcMeasurement.of(millimetres(25), millimetres(75), millimetres(0))),
                        Refusals.of(() -> arc.withShift(millimetres(6)))))
                .containsExactly("must-be-above", "must-be-at-least", "must-be-above", "must-be-at-most");
    }
}
