package dev.waterjet.examples.plan;

import dev.waterjet.examples.predict.ContourCut;
import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.Kind;
import dev.waterjet.part.GeometryException;
import dev.waterjet.simulate.CutPlace;
import dev.waterjet.simulate.CutSimulator;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;

/** Worst predicted deviations of a plan at the top, in the middle and at the bottom of the plate. */
final class Prediction {

    /** Longer programs are predicted by the program predict alone, so that a plan stays quick. */
    private static final int MAX_BLOCKS = 2000;

    private static final int DEPTHS = 5;
    private static final int POINTS = 160;

    private Prediction() {}

    /** Place with the name of its contour. */
    private record Named(String contour, CutPlace place) {

        double size() {
            return Math.abs(place.added().si());
        }
    }

    static Map<String, String> facts(PlanReport report) {
        if (report.program().size() > MAX_BLOCKS) {
            return Map.of(
                    "Predicted cut", "not computed for " + report.program().size() + " blocks; see predict");
        }
        try {
            return worst(report);
        } catch (GeometryException | DomainException refused) {
            return Map.of(
                    "Predicted cut",
                    "not computed: " + refused.message().text(report.units().replaced()));
        }
    }

    private static Map<String, String> worst(PlanReport report) {
        CutSimulator simulator = CutSimulator.of(
                        report.plan().conditions(),
                        report.plan().setup().kerfModel(),
                        report.plan().setup().kerfModel().lagModel())
                .withDepths(DEPTHS)
                .withPoints(POINTS);
        Map<CutPlace.Level, Named> worst = new EnumMap<>(CutPlace.Level.class);
        for (ContourCut cut : ContourCut.of(report.program(), report.plan(), false)) {
            for (CutPlace place : simulator
                    .predict(cut.profile(), cut.contour(), cut.partSide())
                    .places()) {
                Named named = new Named(cut.name(), place);
                worst.merge(place.level(), named, (one, other) -> one.size() >= other.size() ? one : other);
            }
        }
        Map<String, String> facts = new LinkedHashMap<>();
        worst.forEach((level, named) ->
                facts.put("Deviation, " + level.name().toLowerCase(Locale.ROOT), text(named, report)));
        return facts;
    }

    private static String text(Named named, PlanReport report) {
        CutPlace place = named.place();
        return ReportText.of(place.added(), report.units().length())
                + (place.added().si() < 0 ? " gouged" : " left on") + ", " + named.contour() + ", edge "
                + (place.edge() + 1) + "; tolerance "
                + ReportText.of(Kind.LENGTH, place.tolerance(), report.units().length());
    }
}
