package dev.waterjet.quality;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.measure.CsvText;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.TextException;
import dev.waterjet.measure.Units;
import dev.waterjet.measure.WaterjetException;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Length;

/**
 * A scale of face levels whose limits the user supplies, for a standard that is not free or a rule of the house.
 *
 * <p>The text is CSV with the columns {@code level, measure, above_thickness, to_thickness, constant, per_thickness}, finest
 * level first: a level holds what is no more than {@code constant + per_thickness * thickness}, for thicknesses above the
 * third column up to the fourth. Lengths carry their units; {@code per_thickness} is a plain ratio. Lines that start with #
 * are remarks.
 *
 * <pre>
 * level,measure,above_thickness,to_thickness,constant,per_thickness
 * ridge-a,perpendicularity,0 mm,50 mm,0.04 mm,0.002
 * ridge-b,perpendicularity,0 mm,50 mm,0.10 mm,0.005
 * ridge-a,roughness-ra,0 mm,50 mm,4 um,0
 * </pre>
 */
public final class QualityScale implements Serializable {

    private static final long serialVersionUID = 1L;

    private static final List<String> COLUMNS =
            List.of("level", "measure", "above_thickness", "to_thickness", "constant", "per_thickness");

    private record Limit(
            String level, FaceMeasure measure, double aboveM, double toM, double constantM, double perThickness)
            implements Serializable {

        double at(double thicknessM) {
            return constantM + perThickness * thicknessM;
        }

        boolean holdsFor(FaceMeasure asked, double thicknessM) {
            return measure == asked && thicknessM > aboveM && thicknessM <= toM;
        }
    }

    private final List<Limit> limits;

    private QualityScale(List<Limit> limits) {
        this.limits = limits;
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
                    "a scale of face levels starts with the columns " + String.join(",", COLUMNS));
        }
        List<Limit> limits = new ArrayList<>();
        for (CsvText.Row row : rows.subList(1, rows.size())) {
            limits.add(limit(row));
        }
        if (limits.isEmpty()) {
            throw new TextException(rows.get(0).line(), 1, "the scale has no level");
        }
        return new QualityScale(List.copyOf(limits));
    }

    private static Limit limit(CsvText.Row row) {
        List<String> cells = row.cells();
        if (cells.size() != COLUMNS.size()) {
            throw row.fault(0, "the row has " + cells.size() + " cells, not the " + COLUMNS.size() + " of the heading");
        }
        if (cells.get(0).isEmpty()) {
            throw row.fault(0, "the level has no name");
        }
        return new Limit(cells.get(0), measure(row), length(row, 2), length(row, 3), length(row, 4), ratio(row, 5));
    }

    private static FaceMeasure measure(CsvText.Row row) {
        for (FaceMeasure measure : FaceMeasure.values()) {
            if (measure.word().equals(row.cells().get(1))) {
                return measure;
            }
        }
        throw row.fault(
                1, "measure \"" + row.cells().get(1) + "\" is none of perpendicularity, profile-height, roughness-ra");
    }

    private static double length(CsvText.Row row, int cell) {
        try {
            return Require.notNegative(
                    COLUMNS.get(cell),
                    Kind.LENGTH.si(Kind.LENGTH.parse(row.cells().get(cell))),
                    Units.MILLIMETRE);
        } catch (WaterjetException e) {
            throw row.fault(cell, e.getMessage());
        }
    }

    private static double ratio(CsvText.Row row, int cell) {
        try {
            return Require.notNegative(COLUMNS.get(cell), row.number(cell, COLUMNS.get(cell)), Units.ONE);
        } catch (TextException e) {
            throw e;
        } catch (WaterjetException e) {
            throw row.fault(cell, e.getMessage());
        }
    }

    /**
     * The levels of one thickness.
     *
     * @param thickness thickness of the workpiece, above zero
     * @return what grades a value
     */
    public ForThickness forThickness(Quantity<Length> thickness) {
        return new ForThickness(limits, Require.positive("thickness", Kind.LENGTH.si(thickness), Units.MILLIMETRE));
    }

    /** The levels that hold for one thickness. */
    public static final class ForThickness {

        private final List<Limit> limits;
        private final double thicknessM;

        private ForThickness(List<Limit> limits, double thicknessM) {
            this.limits = limits;
            this.thicknessM = thicknessM;
        }

        /**
         * Level of a value.
         *
         * @param measure what was measured
         * @param value the value, zero or more
         * @return the finest level that holds it; nothing if it is beyond all, or the scale says nothing of this measure
         *     and thickness
         */
        public Optional<String> level(FaceMeasure measure, Quantity<Length> value) {
            double valueM = Require.notNegative(measure.word(), Kind.LENGTH.si(value), Units.MILLIMETRE);
            return limits.stream()
                    .filter(limit -> limit.holdsFor(measure, thicknessM) && valueM <= limit.at(thicknessM))
                    .map(Limit::level)
                    .findFirst();
        }

        /**
         * Probability of each level for an estimated value.
         *
         * @param measure what was estimated
         * @param value the estimate
         * @return a probability for each level that the scale has for this measure and thickness, finest first; what is
         *     missing to 1 is beyond all levels
         */
        public Map<String, Double> probabilities(FaceMeasure measure, Estimate<Length> value) {
            Map<String, Double> odds = new LinkedHashMap<>();
            double finer = 0;
            for (Limit limit : limits) {
                if (limit.holdsFor(measure, thicknessM)) {
                    double held = Math.max(finer, value.probabilityAtMost(Kind.LENGTH.of(limit.at(thicknessM))));
                    odds.merge(limit.level(), held - finer, Double::sum);
                    finer = held;
                }
            }
            return odds;
        }
    }

    @Override
    public String toString() {
        return "scale of " + limits.size() + " limits";
    }
}
