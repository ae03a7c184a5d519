package dev.waterjet.examples;

import dev.waterjet.examples.drawing.Drawing;
import dev.waterjet.examples.drawing.TabMark;
import dev.waterjet.measure.Measures;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.TextException;
import dev.waterjet.part.Point;
import dev.waterjet.plan.PartPlanner;
import dev.waterjet.plan.Setup;
import dev.waterjet.sheet.Slats;
import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Pressure;
import picocli.CommandLine.Option;

/** Options of what holds a part: the slats under it and its tabs. */
final class SupportOptions {

    @Option(
            names = "--slat-pitch",
            converter = Typed.Length.class,
            paramLabel = "<distance>",
            description = "Distance between the slats of the table. Default: 50 mm.")
    private Quantity<Length> slatPitch = Measures.millimetres(50);

    @Option(
            names = "--slat-thickness",
            converter = Typed.Length.class,
            paramLabel = "<thickness>",
            description = "Thickness of a slat. Default: 4 mm.")
    private Quantity<Length> slatThickness = Measures.millimetres(4);

    @Option(
            names = "--shear-strength",
            converter = Typed.Pressure.class,
            paramLabel = "<strength>",
            description = "Shear strength of the plate, from its data sheet, to size tabs where the part may fall.")
    private Optional<Quantity<Pressure>> shearStrength = Optional.empty();

    @Option(
            names = "--tab-width",
            converter = Typed.Length.class,
            paramLabel = "<width>",
            description = "Width of the bridge at each tab. Default: the width that bears the reaction of the jet, from"
                    + " --shear-strength.")
    private Optional<Quantity<Length>> tabWidth = Optional.empty();

    Slats slats() {
        return Slats.of(slatPitch, slatThickness);
    }

    Optional<Quantity<Pressure>> shearStrength() {
        return shearStrength;
    }

    Setup on(Setup setup) {
        Setup resting = setup.withSlats(slats());
        return shearStrength.map(resting::withShearStrength).orElse(resting);
    }

    /** The planner with the tabs that a drawing marks. */
    PartPlanner on(PartPlanner planner, Optional<Drawing> drawing) {
        List<Point> places = drawing.map(Drawing::tabs).orElse(List.of()).stream()
                .map(TabMark::place)
                .toList();
        if (!places.isEmpty() && tabWidth.isEmpty() && shearStrength.isEmpty()) {
            throw new TextException(Message.of(
                    "tabs-without-width",
                    "the drawing marks tabs, but their width is not known: add --tab-width, or --shear-strength, from"
                            + " which it follows"));
        }
        PartPlanner holding = planner.withTabs(places);
        return tabWidth.map(holding::withTabWidth).orElse(holding);
    }
}
