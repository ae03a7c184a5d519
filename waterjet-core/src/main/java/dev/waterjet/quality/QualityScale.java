package dev.waterjet.quality;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.measure.CsvText;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.TextException;
import dev.waterjet.measure.Units;
import dev.waterjet.measure.WaterjetException;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import javax.measure.Quantity;
import javax.measure.quantity.Length;

/**
 * Scale of levels whose limits the user supplies, for a standard that is not free or a rule of the workshop.
 *
 * <p>The text is CSV with the columns {@code level, measure, above_thickness, to_thickness, constant, per_thickness}, finest
 * level first: a level contains values up to {@code constant + per_thickness * thickness}, for thicknesses above the third
 * column up to the fourth. Lengths carry their units; {@code per_thickness} is a plain ratio. Lines that start with # are
 * comments.
 *
 * <pre>
 * level,measure,above_thickness,to_thickness,constant,per_thickness
 * ridge-a,perpendicularity,0 mm,50 mm,0.04 mm,0.002
 * ridge-b,perpendicularity,0 mm,50 mm,0.10 mm,0.005
 * ridge-a,roughness-ra,0 mm,50 mm,4 um,0
 * </pre>
 */
public final class QualityScale implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private static final List<String> COLUMNS =
            List.of("level", "measure", "above_thickness", "to_thickness", "constant", "per_thickness");

    /** Measure of a cut surface to which a scale sets limits. */
    public enum Measure {
        /** Perpendicularity tolerance, over the height that the scale's standard states. */
        PERPENDICULARITY("perpendicularity"),
        /** Mean profile height. */
        PROFILE_HEIGHT("profile-height"),
        /** Ra, where the scale's standard states. */
        ROUGHNESS_RA("roughness-ra");

        private final String text;

        Measure(String text) {
            this.text = text;
        }

        /** {@return the measure as it is written in a scale: lower-case words with hyphens} */
        public String text() {
            return text;
        }

        /** {@return the name for people, in lower case} */
        public String label() {
            return text.replace('-', ' ');
        }
    }

    private record Limit(
            String level, Measure measure, double aboveM, double toM, double constantM, double perThickness)
            implements Serializable {

        Limit {
            Objects.requireNonNull(level, "level");
            Objects.requireNonNull(measure, "measure");
            aboveM = Require.notNegative("above_thickness", aboveM, Units.MILLIMETRE);
            toM = Require.notNegative("to_thickness", toM, Units.MILLIMETRE);
            constantM = Require.notNegative("constant", constantM, Units.MILLIMETRE);
            perThickness = Require.notNegative("per_thickness", perThickness, Units.ONE);
        }

        double at(double thicknessM) {
            return constantM + perThickness * thicknessM;
        }

        boolean appliesTo(Measure requested, double thicknessM) {
            return measure == requested && thicknessM > aboveM && thicknessM <= toM;
        }
    }

    /** Checked content, and the serial form. */
    private record Values(List<Limit> limits) implements Serializable {

        Values {
            limits = List.copyOf(limits);
            Require.atLeast("number of limits of a scale", limits.size(), 1, Units.ONE, "");
        }

        private Object readResolve() {
            return new QualityScale(this);
        }
    }

    private final transient Values values;

    private QualityScale(Values values) {
        this.values = values;
    }

    /**
     * Reads a scale.
     *
     * @param csv the text
     * @return the scale
     * @throws TextException if a row cannot be read, with line and column
     */
    public static QualityScale parse(String csv) {
        List<CsvText.Row> rows = CsvText.parse(csv);
        if (rows.isEmpty() || !rows.get(0).cells().equals(COLUMNS)) {
            throw new TextException(
                    rows.isEmpty() ? 1 : rows.get(0).line(),
                    1,
                    Message.of("wrong-columns", "the text must start with the columns {columns}")
                            .with("columns", String.join(",", COLUMNS)));
        }
        List<Limit> limits = new ArrayList<>();
        for (CsvText.Row row : rows.subList(1, rows.size())) {
            limits.add(limit(row));
        }
        if (limits.isEmpty()) {
            throw new TextException(rows.get(0).line(), 1, Message.of("scale-without-level", "the scale has no level"));
        }
        return new QualityScale(new Values(limits));
    }

    private static Limit limit(CsvText.Row row) {
        List<String> cells = row.cells();
        if (cells.size() != COLUMNS.size()) {
            throw fault(
                    row,
                    0,
                    Message.of("wrong-cell-count", "the row has {cells} cells; the heading has {columns}")
                            .with("cells", cells.size())
                            .with("columns", COLUMNS.size()));
        }
        if (cells.get(0).isEmpty()) {
            throw fault(row, 0, Message.of("level-without-name", "the level has no name"));
        }
        return new Limit(cells.get(0), measure(row), length(row, 2), length(row, 3), length(row, 4), ratio(row));
    }

    private static TextException fault(CsvText.Row row, int cell, Message message) {
        return new TextException(row.line(), row.columns().get(cell), message);
    }

    private static Measure measure(CsvText.Row row) {
        for (Measure measure : Measure.values()) {
            if (measure.text.equals(row.cells().get(1))) {
                return measure;
            }
        }
        String known = Arrays.stream(Measure.values()).map(Measure::text).collect(Collectors.joining(", "));
        throw fault(
                row,
                1,
                Message.of("unknown-measure", "unknown measure {text}; use one of {known}")
                        .withInput("text", row.cells().get(1))
                        .with("known", known));
    }

    private static double length(CsvText.Row row, int cell) {
        try {
            double lengthM = Kind.LENGTH.si(Kind.LENGTH.parse(row.cells().get(cell)));
            return Require.notNegative(COLUMNS.get(cell), lengthM, Units.MILLIMETRE);
        } catch (WaterjetException e) {
            throw fault(row, cell, e.message());
        }
    }

    private static double ratio(CsvText.Row row) {
        int cell = COLUMNS.size() - 1;
        double ratio = row.number(cell, COLUMNS.get(cell));
        try {
            return Require.notNegative(COLUMNS.get(cell), ratio, Units.ONE);
        } catch (WaterjetException e) {
            throw fault(row, cell, e.message());
        }
    }

    /**
     * Returns the levels for one thickness.
     *
     * @param thickness thickness of the workpiece, above 0
     * @return the levels
     */
    public ForThickness forThickness(Quantity<Length> thickness) {
        return new ForThickness(this, thickness);
    }

    /**
     * Levels of a scale for one thickness.
     *
     * @param scale the scale
     * @param thickness thickness of the workpiece, above 0
     */
    public record ForThickness(QualityScale scale, Quantity<Length> thickness) {

        /**
         * Checks the components.
         *
         * @param scale the scale
         * @param thickness thickness of the workpiece, above 0
         */
        public ForThickness {
            Objects.requireNonNull(scale, "scale");
            Require.positive("thickness", Kind.LENGTH.si(thickness), Units.MILLIMETRE);
        }

        private List<Limit> limits(Measure measure) {
            double thicknessM = Kind.LENGTH.si(thickness);
            return scale.values.limits.stream()
                    .filter(limit -> limit.appliesTo(measure, thicknessM))
                    .toList();
        }

        /**
         * Returns the level of a value.
         *
         * @param measure measure of the value
         * @param value the value, 0 or more
         * @return the finest level that contains it; empty beyond all levels, and where the scale has no level for this
         *     measure and thickness
         */
        public Optional<String> level(Measure measure, Quantity<Length> value) {
            double valueM = Require.notNegative(measure.label(), Kind.LENGTH.si(value), Units.MILLIMETRE);
            double thicknessM = Kind.LENGTH.si(thickness);
            return limits(measure).stream()
                    .filter(limit -> valueM <= limit.at(thicknessM))
                    .map(Limit::level)
                    .findFirst();
        }

        /**
         * Returns the probability of each level for an estimated value.
         *
         * @param measure measure of the value
         * @param value the estimate
         * @return a probability for each level that the scale has for this measure and thickness, finest first; the rest to
         *     1 is beyond all levels
         */
        public Map<String, Double> probabilities(Measure measure, Estimate<Length> value) {
            double thicknessM = Kind.LENGTH.si(thickness);
            Map<String, Double> probabilities = new LinkedHashMap<>();
            double finer = 0;
            for (Limit limit : limits(measure)) {
                double within = Math.max(finer, value.probabilityAtMost(Kind.LENGTH.of(limit.at(thicknessM))));
                probabilities.merge(limit.level(), within - finer, Double::sum);
                finer = within;
            }
            return probabilities;
        }
    }

    @Override
    public Map<String, Object> describe() {
        List<Map<String, Object>> limits = values.limits.stream()
                .map(limit -> Description.of("limit of a level")
                        .put("level", limit.level)
                        .put("measure", limit.measure)
                        .put("above_thickness", Kind.LENGTH, limit.aboveM)
                        .put("to_thickness", Kind.LENGTH, limit.toM)
                        .put("constant", Kind.LENGTH, limit.constantM)
                        .put("per_thickness", limit.perThickness)
                        .map())
                .toList();
        return Description.of("quality scale").put("limits", limits).map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof QualityScale that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return "quality scale of " + values.limits.size() + " limits";
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
