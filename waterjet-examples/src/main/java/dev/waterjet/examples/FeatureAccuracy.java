package dev.waterjet.examples;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.TextException;
import dev.waterjet.measure.Units;
import dev.waterjet.part.Point;
import dev.waterjet.placement.AccuracyBudget;
import dev.waterjet.placement.AccuracyBudget.Cause;
import dev.waterjet.placement.Location;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;

/** Options of a feature whose accuracy is asked for, and its budget. */
final class FeatureAccuracy {

    private static final Pattern LIMIT = Pattern.compile("within\\s+(.+)");

    @Option(
            names = "--feature",
            converter = Place.class,
            paramLabel = "<x>,<y>",
            description = "Place of a feature in the drawing, such as \"60 mm, 40 mm\", whose place on the machine and"
                    + " accuracy are printed.")
    private Optional<Point> feature = Optional.empty();

    @Option(
            names = "--deviation",
            paramLabel = "<cause>=<length>",
            description = "Deviation of the feature by a cause, once for each: machine, thermal-expansion, kerf-offset,"
                    + " wear, predicted-deviation. A known one with its standard uncertainty, as \"wear=10 um +/- 6"
                    + " um\", or a limit, as \"machine=within 50 um\". Locating follows from the points.")
    private Map<String, String> deviations = new LinkedHashMap<>();

    @Option(
            names = "--tolerance",
            converter = Typed.Length.class,
            paramLabel = "<length>",
            description = "Tolerance of the feature on either side, for the probability to keep it.")
    private Optional<Quantity<Length>> tolerance = Optional.empty();

    /** Reads a place such as {@code 60 mm, 40 mm}. */
    static final class Place implements ITypeConverter<Point> {
        @Override
        public Point convert(String text) {
            String[] parts = text.split(",", -1);
            if (parts.length != 2) {
                throw new TextException("\"" + text + "\" is not a place; write x and y, as in \"60 mm, 40 mm\"");
            }
            return Point.of(Kind.LENGTH.parse(parts[0].strip()), Kind.LENGTH.parse(parts[1].strip()));
        }
    }

    /** Whether a feature is stated; deviations or a tolerance without one are refused. */
    boolean isStated() {
        if (feature.isEmpty() && (!deviations.isEmpty() || tolerance.isPresent())) {
            throw new TextException("--deviation and --tolerance belong to a --feature");
        }
        return feature.isPresent();
    }

    /** Place and accuracy of the feature: a row for each cause, then all together. */
    Table table(Location location) {
        Map<Cause, AccuracyBudget> single = new LinkedHashMap<>();
        AccuracyBudget budget = AccuracyBudget.none();
        single.put(Cause.LOCATING, AccuracyBudget.none().withLocating(location, feature.orElseThrow()));
        budget = budget.withLocating(location, feature.orElseThrow());
        for (Map.Entry<String, String> entry : deviations.entrySet()) {
            Cause cause = cause(entry.getKey());
            single.put(cause, with(AccuracyBudget.none(), cause, entry.getValue()));
            budget = with(budget, cause, entry.getValue());
        }
        Point place = location.move().apply(feature.orElseThrow());
        Table table = Table.of("Accuracy of the feature at " + place + " on the machine")
                .words("cause")
                .column("deviation", Kind.LENGTH, Units.MICROMETRE, 3)
                .column("standard uncertainty", Kind.LENGTH, Units.MICROMETRE, 2)
                .number("share", 2);
        for (Map.Entry<Cause, AccuracyBudget> entry : single.entrySet()) {
            row(table, entry.getKey().label(), entry.getValue(), budget.share(entry.getKey()));
        }
        row(table, "together", budget, 1);
        budget.dominant().ifPresent(cause -> table.note("Largest share: " + cause.label() + "."));
        AccuracyBudget whole = budget;
        tolerance.ifPresent(limit -> table.note("Within " + QuantityText.forPeople(Kind.LENGTH, limit)
                + " of its drawing with a probability of "
                + QuantityText.round(100 * whole.probabilityWithin(limit), 3) + " %."));
        return table;
    }

    private static void row(Table table, String name, AccuracyBudget budget, double share) {
        Estimate<Length> deviation = budget.deviation();
        table.row(name, deviation.si(), deviation.standardUncertaintySi(), share);
    }

    private static Cause cause(String text) {
        String name = text.strip().toUpperCase(Locale.ROOT).replaceAll("[ -]+", "_");
        return Arrays.stream(Cause.values())
                .filter(cause -> cause != Cause.LOCATING && cause.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new TextException("\"" + text + "\" is not a cause; use one of "
                        + Arrays.stream(Cause.values())
                                .filter(cause -> cause != Cause.LOCATING)
                                .map(cause -> cause.label().replace(' ', '-'))
                                .collect(Collectors.joining(", "))));
    }

    private static AccuracyBudget with(AccuracyBudget budget, Cause cause, String text) {
        Matcher limit = LIMIT.matcher(text.strip());
        if (limit.matches()) {
            return budget.withLimit(cause, Kind.LENGTH.parse(limit.group(1)));
        }
        Matcher known = StatedNumber.UNCERTAIN.matcher(text.strip());
        if (!known.matches()) {
            throw new TextException("\"" + text
                    + "\" states no uncertainty; write a deviation as \"10 um +/- 6 um\" or \"within 50 um\"");
        }
        double deviation = known.group(1).isBlank() ? 0 : Kind.LENGTH.si(Kind.LENGTH.parse(known.group(1)));
        double uncertainty = Kind.LENGTH.si(Kind.LENGTH.parse(known.group(2)));
        return budget.with(cause, Estimate.of(Kind.LENGTH, deviation, uncertainty));
    }
}
