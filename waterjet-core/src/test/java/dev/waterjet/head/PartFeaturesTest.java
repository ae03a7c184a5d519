package dev.waterjet.head;

import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Part;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Requirements read from the geometry of a part; slots and radii are those drawn. */
class PartFeaturesTest {

    private static final Workpiece PLATE = Workpiece.of(Materials.standard().get("mild-steel-a36"), millimetres(10));

    private static PartRequirement of(Contour outline, Contour... holes) {
        return PartRequirement.of(Part.of(outline, holes), PLATE);
    }

    /** A plate with a slot of a width and a depth from its upper edge, turned by an angle. */
    private static Contour slotted(double width, double depth, double turned) {
        return Contour.from(Point.millimetres(0, 0))
                .lineTo(Point.millimetres(50, 0))
                .lineTo(Point.millimetres(50, 40))
                .lineTo(Point.millimetres(25 + width, 40))
                .lineTo(Point.millimetres(25 + width, 40 - depth))
                .lineTo(Point.millimetres(25, 40 - depth))
                .lineTo(Point.millimetres(25, 40))
                .lineTo(Point.millimetres(0, 40))
                .close()
                .rotatedBy(Kind.ANGLE.of(turned));
    }

    @ParameterizedTest
    @CsvSource({"0.3, 12, 0", "0.3, 3, 1", "1.1, 12, 0.4", "1.7, 25, 2", "2.3, 8, 3", "0.05, 5, 0.2"})
    void aSlotHasItsWidth(double width, double depth, double turned) {
        assertThat(of(slotted(width, depth, turned)).minimumSlotWidth().map(Kind.LENGTH::si))
                .hasValueSatisfying(found -> assertThat(found).isCloseTo(width / 1000, within(1e-6)));
    }

    @ParameterizedTest
    @CsvSource({"2.6, 12, 0", "9, 20, 1"})
    void aWideSlotLimitsNoJet(double width, double depth, double turned) {
        assertThat(of(slotted(width, depth, turned)).minimumSlotWidth()).isEmpty();
    }

    @Test
    void roundHolesLimitByTheirRadius() {
        Contour rim = Contour.rectangle(Point.millimetres(0, 0), Point.millimetres(60, 40), EdgeRequirement.defaults());
        EdgeRequirement fine = EdgeRequirement.of(CutQuality.FINE);
        PartRequirement requirement = of(
                rim,
                Contour.circle(Point.millimetres(20, 20), millimetres(3.5), fine),
                Contour.circle(Point.millimetres(40, 20), millimetres(0.6), EdgeRequirement.defaults()));

        assertThat(requirement.minimumInnerRadius().map(Kind.LENGTH::si))
                .hasValueSatisfying(found -> assertThat(found).isCloseTo(0.6e-3, within(1e-9)));
        assertThat(requirement.minimumSlotWidth().map(Kind.LENGTH::si))
                .hasValueSatisfying(found -> assertThat(found).isCloseTo(1.2e-3, within(2e-6)));
        assertThat(requirement.quality()).isEqualTo(CutQuality.FINE);
        assertThat(requirement.pierces()).isEqualTo(3);
        assertThat(Kind.LENGTH.si(requirement.length())).isCloseTo(0.2 + 2 * Math.PI * 0.0041, within(1e-9));
    }

    @Test
    void outerArcsAndSharpCornersLimitNothing() {
        PartRequirement requirement = of(Contour.from(Point.millimetres(0, 0))
                .lineTo(Point.millimetres(40, 0))
                .lineTo(Point.millimetres(40, 30))
                .lineTo(Point.millimetres(1, 30))
                .arcTo(Point.millimetres(0, 29), Point.millimetres(1, 29), Side.LEFT)
                .close());

        assertThat(requirement.minimumInnerRadius()).isEmpty();
        assertThat(requirement.minimumSlotWidth()).isEmpty();
    }

    @Test
    void theSmallerOfTwoContoursCounts() {
        Contour narrow = slotted(0.7, 12, 0);
        Contour wide = slotted(1.9, 12, 0);
        PartRequirement requirement = PartRequirement.of(PLATE, CutQuality.MEDIUM, millimetres(100))
                .withFeaturesOf(wide, wide.enclosedSide());

        assertThat(requirement
                        .withFeaturesOf(narrow, narrow.enclosedSide())
                        .minimumSlotWidth()
                        .map(Kind.LENGTH::si))
                .hasValueSatisfying(found -> assertThat(found).isCloseTo(0.7e-3, within(1e-6)));
        assertThat(requirement
                        .withMinimumSlotWidth(millimetres(0.2))
                        .withFeaturesOf(narrow, narrow.enclosedSide())
                        .minimumSlotWidth()
                        .map(Kind.LENGTH::si))
                .contains(0.2e-3);
    }
}
