package dev.waterjet.examples.plan;

import dev.waterjet.examples.predict.ContourCut;
import dev.waterjet.examples.predict.DeviationDrawing;
import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.Kind;
import dev.waterjet.part.Contour;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.GeometryException;
import dev.waterjet.simulate.CutPlace;
import dev.waterjet.simulate.CutSimulator;
import dev.waterjet.simulate.DeviationMap;
import dev.waterjet.simulate.PredictedCut;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Worst predicted deviations of a plan at the top, in the middle and at the bottom of the plate. */
final class Prediction {

    /** Longer programs are predicted by the program predict alone, so that a plan stays quick. */
    private static final int MAX_BLOCKS = 2000;

    /** Contours of different shapes that are predicted at most; each takes some hundredths of a second. */
    private static final int MAX_SHAPES = 100;

    /** Step of distances, angles and times that are equal in two shapes, in m, rad, s; written values lie between its bounds. */
    private static final double SAME = 1.1e-6;

    private static final int DEPTHS = 5;
    private static final int POINTS = 160;

    /** Deviation that is drawn by so much of the size of a part. */
    private static final double DRAWN_SHARE = 0.04;

    private static final double MAX_EXAGGERATION = 100;

    private final Map<String, String> facts;
    private final String svg;

    private Prediction(Map<String, String> facts, String svg) {
        this.facts = facts;
        this.svg = svg;
    }

    /** Place with the name of its contour, and the prediction of that contour. */
    private record Named(String contour, CutPlace place, PredictedCut cut) {

        double size() {
            return Math.abs(place.added().si());
        }
    }

    /** {@return the worst deviations in words, with their labels; why there are none where nothing was computed} */
    Map<String, String> facts() {
        return facts;
    }

    /** {@return a drawing of the contour with the largest deviation, as SVG; empty where nothing was computed} */
    String svg() {
        return svg;
    }

    static Prediction of(PlanReport report) {
        if (report.program().size() > MAX_BLOCKS) {
            return none("not computed for " + report.program().size() + " blocks; see predict");
        }
        try {
            return worst(report);
        } catch (GeometryException | DomainException refused) {
            return none("not computed: " + refused.message().text(report.units().replaced()));
        }
    }

    private static Prediction none(String reason) {
        return new Prediction(Map.of("Predicted cut", reason), "");
    }

    private static Prediction worst(PlanReport report) {
        CutSimulator simulator = CutSimulator.of(
                        report.plan().conditions(),
                        report.plan().setup().kerfModel(),
                        report.plan().setup().kerfModel().lagModel())
                .withDepths(DEPTHS)
                .withPoints(POINTS);
        Map<CutPlace.Level, Named> worst = new EnumMap<>(CutPlace.Level.class);
        Collection<ContourCut> cuts = different(ContourCut.of(report.program(), report.plan(), false));
        if (cuts.size() > MAX_SHAPES) {
            return none("not computed for " + cuts.size() + " different contours; see predict");
        }
        for (ContourCut cut : cuts) {
            PredictedCut predicted = simulator.predict(cut.profile(), cut.contour(), cut.partSide());
            for (CutPlace place : predicted.places()) {
                Named named = new Named(cut.name(), place, predicted);
                worst.merge(place.level(), named, (one, other) -> one.size() >= other.size() ? one : other);
            }
        }
        Map<String, String> facts = new LinkedHashMap<>();
        worst.forEach((level, named) ->
                facts.put("Deviation, " + level.name().toLowerCase(Locale.ROOT), text(named, report)));
        return new Prediction(
                facts,
                worst.values().stream()
                        .max(Comparator.comparingDouble(Named::size))
                        .map(Prediction::drawing)
                        .orElse(""));
    }

    /** The first of all cuts that have the same shape and feeds. */
    private static Collection<ContourCut> different(List<ContourCut> cuts) {
        Map<List<Object>, ContourCut> firsts = new LinkedHashMap<>();
        cuts.forEach(cut -> firsts.putIfAbsent(shape(cut), cut));
        return firsts.values();
    }

    /** Numbers that are equal for cuts that differ in their place alone. */
    private static List<Object> shape(ContourCut cut) {
        List<Object> shape = new ArrayList<>();
        shape.add(cut.partSide());
        shape.add(Math.round(Kind.TIME.si(cut.profile().time()) / SAME));
        Contour contour = cut.contour();
        EdgeCursor edge = new EdgeCursor();
        for (int i = 0; i < contour.size(); i++) {
            contour.load(i, edge);
            shape.add(contour.requirement(i));
            shape.add(Math.round(edge.length() / SAME));
            shape.add(Math.round(edge.sweep() / SAME));
            shape.add(Math.round((edge.endX() - contour.xSi(0)) / SAME));
            shape.add(Math.round((edge.endY() - contour.ySi(0)) / SAME));
        }
        return shape;
    }

    private static String drawing(Named worst) {
        DeviationMap map = worst.cut().map();
        double size = Math.max(
                Kind.LENGTH.si(map.contour().box().width()),
                Kind.LENGTH.si(map.contour().box().height()));
        double exaggeration = Math.max(1, Math.min(MAX_EXAGGERATION, Math.rint(DRAWN_SHARE * size / worst.size())));
        return DeviationDrawing.of(
                        "Predicted cut of " + worst.contour(),
                        "Deviations of the contour with the largest one, unrolled and as the bottom edge.")
                .unrolled(worst.contour(), map, Math.max(worst.size(), 1e-5))
                .bottomEdge(worst.contour(), map, exaggeration)
                .svg();
    }

    private static String text(Named named, PlanReport report) {
        CutPlace place = named.place();
        return ReportText.of(place.added(), report.units().length())
                + (place.added().si() < 0 ? " gouged" : " left on") + ", " + named.contour() + ", edge "
                + (place.edge() + 1) + "; tolerance "
                + ReportText.of(Kind.LENGTH, place.tolerance(), report.units().length());
    }
}
