package dev.waterjet.examples.drawing;

import dev.waterjet.evidence.Caution;
import dev.waterjet.examples.drawing.LayerRule.Use;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.TextException;
import dev.waterjet.measure.Units;
import dev.waterjet.part.Box;
import dev.waterjet.part.Contour;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.Point;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.DoubleFunction;

/** Makes a drawing of what a reader returns: layer rules, tiny and duplicate entities, joined ends, tabs. */
public final class DrawingAssembler {

    private final DrawingSettings settings;
    private final List<Caution> cautions = new ArrayList<>();
    private final List<Stroke> cut = new ArrayList<>();
    private final List<Stroke> marked = new ArrayList<>();
    private final List<Stroke> tabs = new ArrayList<>();

    private DrawingAssembler(DrawingSettings settings) {
        this.settings = settings;
    }

    /**
     * Reads a drawing at its size, or twice where the settings state its width.
     *
     * @param reader reads the drawing with its lengths multiplied by a factor
     * @param settings settings of the reading
     * @return the drawing
     * @throws TextException with code {@code empty-drawing} if nothing is to be cut, {@code drawing-branch} if more than two
     *     lines meet, or as the reader says
     */
    public static Drawing read(DoubleFunction<DrawingSource> reader, DrawingSettings settings) {
        DrawingSource source = reader.apply(1);
        if (settings.width().isPresent()) {
            DrawingAssembler trial = new DrawingAssembler(settings);
            trial.sort(source);
            double width = Kind.LENGTH.si(Drawing.boxOf(trial.cut).width());
            if (!(width > 0)) {
                throw new TextException(
                        Message.of("drawing-without-width", "the drawing has no width that could be scaled"));
            }
            source = reader.apply(Kind.LENGTH.si(settings.width().get()) / width);
        }
        return new DrawingAssembler(settings).assemble(source);
    }

    private Drawing assemble(DrawingSource source) {
        cautions.addAll(source.cautions());
        sort(source);
        unusedRules(source);
        List<Stroke> whole = withoutTiny(withoutDuplicates(cut));
        if (whole.isEmpty()) {
            throw new TextException(Message.of("empty-drawing", "the drawing has nothing to cut"));
        }
        GapLog gaps = new GapLog();
        List<Stroke> joined = named(Chains.join(whole, settings.joinM(), false, gaps));
        gaps.caution().ifPresent(cautions::add);
        List<Stroke> marks = named(Chains.join(marked, settings.joinM(), true, new GapLog()));
        assumedUnit(source, joined);
        return new Drawing(
                source.format(),
                joined,
                marks,
                tabMarks(joined),
                source.unitM(),
                source.isUnitStated() || settings.width().isPresent(),
                settings.joinM(),
                cautions);
    }

    /** Sorts strokes by the use of their layers. */
    private void sort(DrawingSource source) {
        int skipped = 0;
        Map<String, Integer> layers = new TreeMap<>();
        for (Stroke stroke : source.strokes()) {
            Use use = settings.use(stroke.origin());
            switch (use) {
                case MARK -> marked.add(required(stroke));
                case TAB -> tabs.add(stroke);
                case SKIP -> {
                    skipped++;
                    layers.merge(lastLayer(stroke.origin()), 1, Integer::sum);
                }
                default -> cut.add(required(stroke));
            }
        }
        if (skipped > 0) {
            cautions.add(
                    Caution.notice(Message.of("layer-skipped", "lines left out by a layer rule: {count} ({layers})")
                            .with("count", skipped)
                            .with("layers", String.join(", ", layers.keySet()))));
        }
    }

    /** A rule that is about nothing is likely a layer spelt wrongly. */
    private void unusedRules(DrawingSource source) {
        for (LayerRule rule : settings.layers()) {
            boolean isUsed = rule.use() == Use.SKIP
                    || source.strokes().stream().anyMatch(stroke -> rule.isAbout(stroke.origin()));
            if (!isUsed) {
                cautions.add(Caution.warning(
                        Message.of("layer-rule-unused", "no line to cut is on the layer or of the colour {layer}")
                                .withInput("layer", rule.key())));
            }
        }
    }

    private static String lastLayer(Origin origin) {
        List<String> layers = origin.layers();
        return layers.isEmpty() ? origin.colour() : layers.get(layers.size() - 1);
    }

    private Stroke required(Stroke stroke) {
        Contour path = stroke.path();
        return stroke.with(path.withRequirement(settings.requirement(stroke.origin(), path.requirement(0))));
    }

    private List<Stroke> withoutTiny(List<Stroke> strokes) {
        List<Stroke> kept = new ArrayList<>();
        int dropped = 0;
        Origin first = Origin.NONE;
        for (Stroke stroke : strokes) {
            Box box = stroke.path().box();
            double size = Math.hypot(Kind.LENGTH.si(box.width()), Kind.LENGTH.si(box.height()));
            if (size > settings.joinM()) {
                kept.add(stroke);
            } else {
                first = dropped == 0 ? stroke.origin() : first;
                dropped++;
            }
        }
        if (dropped > 0) {
            cautions.add(Caution.warning(
                    Message.of("tiny-entities", "lines left out as no larger than {size}: {count}, the first {place}")
                            .with("count", dropped)
                            .with("size", Kind.LENGTH, settings.joinM(), Units.MILLIMETRE)
                            .with("place", first.place())));
        }
        return kept;
    }

    private List<Stroke> withoutDuplicates(List<Stroke> strokes) {
        Duplicates duplicates = new Duplicates(settings.joinM());
        List<Stroke> kept = new ArrayList<>();
        int dropped = 0;
        Origin first = Origin.NONE;
        for (Stroke stroke : strokes) {
            if (!duplicates.isRepeated(stroke.path())) {
                kept.add(stroke);
            } else {
                first = dropped == 0 ? stroke.origin() : first;
                dropped++;
            }
        }
        if (dropped > 0) {
            cautions.add(Caution.warning(Message.of(
                            "duplicate-entities",
                            "lines left out that lie on another within {size}: {count}, the first {place}")
                    .with("count", dropped)
                    .with("size", Kind.LENGTH, settings.joinM(), Units.MILLIMETRE)
                    .with("place", first.place())));
        }
        return kept;
    }

    private List<Stroke> named(List<Stroke> strokes) {
        List<Stroke> named = new ArrayList<>();
        for (Stroke stroke : strokes) {
            Origin origin =
                    settings.name(stroke.origin()).map(stroke.origin()::named).orElse(stroke.origin());
            named.add(new Stroke(stroke.path().named(origin.label()), origin));
        }
        return named;
    }

    private void assumedUnit(DrawingSource source, List<Stroke> joined) {
        if (source.isUnitStated() || settings.width().isPresent()) {
            return;
        }
        Box box = Drawing.boxOf(joined);
        cautions.add(Caution.warning(Message.of(
                        "drawing-unit-assumed",
                        "the drawing states no size in mm or in; one unit is taken as {unit}, so it measures {width} by"
                                + " {height}; if that is wrong, use --drawing-unit or --width")
                .with("unit", Kind.LENGTH, source.unitM(), Units.MILLIMETRE)
                .with("width", Kind.LENGTH, Kind.LENGTH.si(box.width()), Units.MILLIMETRE)
                .with("height", Kind.LENGTH, Kind.LENGTH.si(box.height()), Units.MILLIMETRE)));
    }

    /** For each stroke on a tab layer the place of the nearest contour to its middle. */
    private List<TabMark> tabMarks(List<Stroke> contours) {
        List<TabMark> marks = new ArrayList<>();
        for (Stroke tab : tabs) {
            nearest(tab, contours).ifPresent(marks::add);
        }
        return marks;
    }

    private static Optional<TabMark> nearest(Stroke tab, List<Stroke> contours) {
        Box box = tab.path().box();
        Point middle = box.centre();
        EdgeCursor edge = new EdgeCursor();
        double least = Double.POSITIVE_INFINITY;
        TabMark best = null;
        for (int c = 0; c < contours.size(); c++) {
            Contour path = contours.get(c).path();
            double along = 0;
            for (int i = 0; i < path.size(); i++) {
                path.load(i, edge);
                double distance = edge.distance(middle.xSi(), middle.ySi());
                if (distance < least) {
                    least = distance;
                    double share = share(edge, middle.xSi(), middle.ySi());
                    best = new TabMark(
                            c,
                            along + share * edge.length(),
                            Point.ofSi(edge.xAt(share), edge.yAt(share)),
                            tab.origin());
                }
                along += edge.length();
            }
        }
        return Optional.ofNullable(best);
    }

    /** Share of an edge at which it is nearest to a point. */
    private static double share(EdgeCursor edge, double x, double y) {
        if (edge.isArc()) {
            double from = Math.atan2(edge.startY() - edge.centreY(), edge.startX() - edge.centreX());
            double turn = Math.atan2(y - edge.centreY(), x - edge.centreX()) - from;
            double share = turn / edge.sweep();
            double whole = 2 * Math.PI / Math.abs(edge.sweep());
            share -= whole * Math.floor(share / whole);
            // beyond the end: the nearer of both ends
            return share <= 1 ? share : share - 1 < whole - share ? 1 : 0;
        }
        double dx = edge.endX() - edge.startX();
        double dy = edge.endY() - edge.startY();
        double share = ((x - edge.startX()) * dx + (y - edge.startY()) * dy) / (dx * dx + dy * dy);
        return Math.min(1, Math.max(0, share));
    }
}
