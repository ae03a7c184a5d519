package dev.waterjet.part;

import static dev.waterjet.Refusals.assertRefused;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatNoException;

import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import java.util.Arrays;
import java.util.List;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;

/** Serial forms that no builder makes are refused; each fault alone. */
class ContourDamageTest {

    /** Arrays of a closed bar with round ends, to be damaged. */
    private static final class Form {
        double[] x = {0, 1, 1, 0, 0};
        double[] y = {0, 0, 1, 1, 0};
        double[] sweep = {0, Math.PI, 0, Math.PI};
        double[] centreX = {0, 1, 0, 0};
        double[] centreY = {0, 0.5, 0, 0.5};
        short[] key = {0, 1, 0, 1};
        boolean[] isCurve = {false, false, true, false};
        boolean isClosed = true;
        List<EdgeRequirement> requirements =
                List.of(EdgeRequirement.of(CutQuality.FINE), EdgeRequirement.of(CutQuality.MEDIUM));

        ContourForm make() {
            return new ContourForm(x, y, sweep, centreX, centreY, key, isCurve, isClosed, requirements, "bar");
        }

        void asLines() {
            sweep = new double[0];
            centreX = new double[0];
            centreY = new double[0];
        }
    }

    private static void accepted(Consumer<Form> change) {
        Form form = new Form();
        change.accept(form);
        assertThatNoException().isThrownBy(form::make);
    }

    private static GeometryException refused(String code, Consumer<Form> change) {
        Form form = new Form();
        change.accept(form);
        return (GeometryException) assertRefused(form::make, code);
    }

    @Test
    void arraysOfDifferentLengthsAreRefused() {
        accepted(form -> {});
        refused("contour-damaged", form -> form.x = Arrays.copyOf(form.x, 4));
        refused("contour-damaged", form -> form.x = Arrays.copyOf(form.x, 6));
        refused("contour-damaged", form -> form.y = Arrays.copyOf(form.y, 4));
        refused("contour-damaged", form -> form.y = Arrays.copyOf(form.y, 6));
        refused("contour-damaged", form -> form.sweep = Arrays.copyOf(form.sweep, 3));
        refused("contour-damaged", form -> form.sweep = Arrays.copyOf(form.sweep, 5));
        refused("contour-damaged", form -> form.sweep = new double[0]);
        refused("contour-damaged", form -> form.centreX = Arrays.copyOf(form.centreX, 3));
        refused("contour-damaged", form -> form.centreY = Arrays.copyOf(form.centreY, 5));
        refused("contour-damaged", form -> form.isCurve = Arrays.copyOf(form.isCurve, 3));
        refused("contour-damaged", form -> form.isCurve = Arrays.copyOf(form.isCurve, 5));
        refused("contour-damaged", form -> form.key = Arrays.copyOf(form.key, 5));
        accepted(form -> form.isCurve = new boolean[0]);
        accepted(Form::asLines);
        refused("contour-damaged", form -> {
            form.asLines();
            form.x = new double[1];
            form.y = new double[1];
            form.key = new short[0];
            form.isCurve = new boolean[0];
        });
    }

    @Test
    void keysOutsideTheRequirementsAreRefused() {
        assertRefused(
                () -> {
                    Form form = new Form();
                    form.key[3] = 2;
                    form.make();
                },
                "must-be-at-most");
        assertRefused(
                () -> {
                    Form form = new Form();
                    form.key[0] = -1;
                    form.make();
                },
                "must-be-at-least");
    }

    @Test
    void placesThatAreNotFiniteAreRefused() {
        assertThat(refused("coordinate-not-finite", form -> form.x[2] = Double.NaN)
                        .edge())
                .isEqualTo(1);
        refused("coordinate-not-finite", form -> form.y[0] = Double.POSITIVE_INFINITY);
        assertThat(refused("coordinate-not-finite", form -> form.y[4] = Double.NaN)
                        .edge())
                .isEqualTo(3);
        refused("coordinate-not-finite", form -> form.centreX[1] = Double.NaN);
        refused("coordinate-not-finite", form -> form.centreY[3] = Double.NEGATIVE_INFINITY);
        refused("coordinate-not-finite", form -> form.sweep[1] = Double.NaN);
    }

    @Test
    void arcsThatDoNotFitTheirEndsAreRefused() {
        GeometryException radii = refused("arc-radii-differ", form -> form.centreY[1] = 0.6);
        assertThat(radii.edge()).isEqualTo(1);
        assertThat(radii.xSi()).isEqualTo(1);
        assertThat(radii.ySi()).isZero();
        assertThat(radii.parameters()).containsEntry("limit_m", 1e-9 + 1e-9 * 0.6);
        refused("arc-radii-differ", form -> form.centreX[1] = 1.1);
        // the radii agree, the angle does not
        refused("arc-radii-differ", form -> form.sweep[3] = 3);
        refused("arc-radii-differ", form -> form.sweep[3] = Math.PI + 1e-8);
        accepted(form -> form.sweep[3] = Math.PI + 1e-10);
        accepted(form -> form.centreY[1] = 0.5 + 0.5e-9);
        refused("arc-radii-differ", form -> form.centreY[1] = 0.5 + 1e-8);
        accepted(form -> form.sweep[3] = -Math.PI);
        refused("coordinate-not-finite", form -> form.sweep[3] = 3 * Math.PI);
        refused("arc-without-radius", form -> {
            form.centreX[1] = 1;
            form.centreY[1] = 0;
        });
    }

    /** A full circle is an arc to its start. */
    @Test
    void aFullTurnIsTheLargestSweep() {
        Consumer<Form> circle = form -> {
            form.x = new double[] {1, 1};
            form.y = new double[] {0, 0};
            form.sweep = new double[] {2 * Math.PI};
            form.centreX = new double[] {0};
            form.centreY = new double[] {0};
            form.key = new short[] {1};
            form.isCurve = new boolean[0];
        };
        accepted(circle);
        accepted(circle.andThen(form -> form.sweep[0] = -2 * Math.PI));
        refused("coordinate-not-finite", circle.andThen(form -> form.sweep[0] = Math.nextUp(2 * Math.PI)));
        refused("arc-without-radius", circle.andThen(form -> form.centreX[0] = 1 - 1e-9));
        accepted(circle.andThen(form -> form.centreX[0] = 1 - 2e-9));
    }

    @Test
    void closedContoursEndWhereTheyStartAndEncloseAnArea() {
        refused("contour-without-area", form -> {
            form.asLines();
            form.x[4] = 0.1;
        });
        refused("contour-without-area", form -> {
            form.asLines();
            form.y[4] = 0.1;
        });
        accepted(form -> {
            form.asLines();
            form.y[4] = 0.1;
            form.isClosed = false;
        });
        Consumer<Form> two = form -> {
            form.asLines();
            form.x = new double[] {0, 1, 0};
            form.y = new double[3];
            form.key = new short[2];
            form.isCurve = new boolean[0];
        };
        refused("contour-without-area", two);
        accepted(two.andThen(form -> form.isClosed = false));
        accepted(two.andThen(form -> {
            form.x = new double[] {0, 1, 0, 0};
            form.y = new double[] {0, 0, 1, 0};
            form.key = new short[3];
        }));
    }

    @Test
    void linesWithoutLengthAreRefused() {
        GeometryException refused = refused("zero-length-edge", form -> {
            form.asLines();
            form.x[3] = 1;
        });
        assertThat(refused.edge()).isEqualTo(2);
        assertThat(refused.xSi()).isEqualTo(1);
        assertThat(refused.ySi()).isEqualTo(1);
        refused("zero-length-edge", form -> {
            form.asLines();
            form.x[3] = 1 - 0.9e-9;
        });
        accepted(form -> {
            form.asLines();
            form.x[3] = 1 - 1.1e-9;
        });
    }

    @Test
    void aFormHasArraysOfItsOwnAndZerosWithoutSign() {
        Form form = new Form();
        form.x[0] = -0.0;
        form.x[4] = -0.0;
        form.centreX[3] = -0.0;
        form.centreY[1] = 0.5;
        ContourForm made = form.make();
        form.x[1] = 99;
        form.y[1] = 99;
        form.sweep[1] = 99;
        form.centreX[1] = 99;
        form.centreY[1] = 99;
        form.key[1] = 99;
        form.isCurve[2] = false;

        assertThat(made.x()).containsExactly(0.0, 1, 1, 0, 0);
        assertThat(made.y()).containsExactly(0.0, 0, 1, 1, 0);
        assertThat(made.sweep()).containsExactly(0, Math.PI, 0, Math.PI);
        assertThat(made.centreX()).containsExactly(0.0, 1, 0, 0);
        assertThat(made.centreY()).containsExactly(0, 0.5, 0, 0.5);
        assertThat(made.key()).containsExactly(0, 1, 0, 1);
        assertThat(made.isCurve()).containsExactly(false, false, true, false);
    }
}
