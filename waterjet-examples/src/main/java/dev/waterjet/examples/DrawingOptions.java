package dev.waterjet.examples;

import static dev.waterjet.measure.Measures.millimetres;

import dev.waterjet.examples.drawing.DrawingSettings;
import dev.waterjet.examples.drawing.LayerRule;
import dev.waterjet.quality.EdgeRequirement;
import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import picocli.CommandLine.Option;

/** Options of reading a drawing; mixed into every program that takes one. */
final class DrawingOptions {

    @Option(
            names = "--layer",
            converter = Typed.Layer.class,
            paramLabel = "<layer>=<use>",
            description =
                    "Use of a layer, group, shape (by its id) or colour: a cut quality (FINE=fine), mark, tab, skip, or"
                            + " name:NAME. Colours are written #ff0000, red or colour:1.")
    private List<LayerRule> layers = List.of();

    @Option(
            names = "--drawing-unit",
            converter = Typed.DrawingUnit.class,
            paramLabel = "<unit>",
            description = "Length of one unit of the drawing: mm, in, \"1/72 in\". Default: as the drawing states.")
    private Optional<Quantity<Length>> unit = Optional.empty();

    @Option(
            names = "--width",
            converter = Typed.Length.class,
            paramLabel = "<width>",
            description = "Width of all that is cut; the drawing is scaled to it. Default: as drawn.")
    private Optional<Quantity<Length>> width = Optional.empty();

    @Option(
            names = "--join",
            converter = Typed.Length.class,
            paramLabel = "<gap>",
            description = "Maximum gap between ends of lines that are joined. Default: 0.01 mm.")
    private Quantity<Length> join = millimetres(0.01);

    @Option(
            names = "--chord-tolerance",
            converter = Typed.Length.class,
            paramLabel = "<length>",
            description = "Maximum distance of a curve from the lines and arcs that replace it. Default: 0.01 mm.")
    private Quantity<Length> chordTolerance = millimetres(0.01);

    /** Settings of the reading, with the requirement where no layer has its own. */
    DrawingSettings settings(EdgeRequirement requirement) {
        return new DrawingSettings(chordTolerance, join, unit, width, requirement, layers);
    }
}
