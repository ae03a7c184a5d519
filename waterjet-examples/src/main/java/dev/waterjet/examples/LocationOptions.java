package dev.waterjet.examples;

import dev.waterjet.evidence.Caution;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Measures;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.Units;
import dev.waterjet.placement.Location;
import dev.waterjet.placement.RigidMove;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Angle;
import picocli.CommandLine.Option;

/** Options of the place of a part that was cut or machined before. */
final class LocationOptions {

    @Option(
            names = "--location",
            paramLabel = "<file>",
            description = "File of probed points, as the program locate takes it: the part is planned, and its program"
                    + " written, where the points lie. Default: the part lies as it is drawn.")
    private Optional<Path> file = Optional.empty();

    @Option(
            names = "--expect-rotation",
            converter = Typed.Angle.class,
            paramLabel = "<angle>",
            description =
                    "Approximate rotation of the location, which decides where two places fit alike. Default: 0 deg.")
    private Quantity<Angle> expected = Measures.degrees(0);

    /** The move from the drawing to the machine; empty if no points are given. */
    Optional<RigidMove> move() {
        return location().map(Location::move);
    }

    /** The place that was found; empty if no points are given. */
    Optional<Location> location() {
        return file.map(path -> ProbeFile.locate(ProbeFile.read(path), expected));
    }

    /** Cautions of the input, and those of a place: where the part was found, and how well. */
    List<Caution> cautions(List<Caution> ofInput) {
        List<Caution> all = new ArrayList<>(ofInput);
        location().ifPresent(found -> {
            all.add(Caution.warning(Message.of(
                            "part-located",
                            "the part was found turned by {rotation}, its origin at {shift_x}, {shift_y}, and is cut"
                                    + " there: run the program without the jet first")
                    .with("rotation", Kind.ANGLE, Kind.ANGLE.si(found.move().rotation()), Units.DEGREE)
                    .with("shift_x", Kind.LENGTH, found.move().shift().xSi(), Units.MILLIMETRE)
                    .with("shift_y", Kind.LENGTH, found.move().shift().ySi(), Units.MILLIMETRE)));
            all.addAll(found.cautions());
        });
        return all;
    }
}
