package dev.waterjet.examples.dxf;

import dev.waterjet.evidence.Caution;
import dev.waterjet.examples.drawing.AffineMap;
import dev.waterjet.examples.drawing.DrawingSettings;
import dev.waterjet.examples.drawing.LayerRule;
import dev.waterjet.examples.drawing.Origin;
import dev.waterjet.examples.drawing.Stroke;
import dev.waterjet.examples.drawing.StrokePen;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.TextException;
import dev.waterjet.part.GeometryException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/** Walk through the entities of model space and the blocks that they insert. */
final class DxfWalk {

    private static final int DEEPEST = 16;
    private static final int MAX_ARRAY = 10_000;
    private static final int MAX_ENTITIES = 1_000_000;

    private static final Set<String> CURVES =
            Set.of("LINE", "ARC", "CIRCLE", "ELLIPSE", "SPLINE", "LWPOLYLINE", "POLYLINE");

    /** Entities that hold nothing to cut by their nature. */
    private static final Set<String> NOTES = Set.of(
            "TEXT",
            "MTEXT",
            "ATTRIB",
            "ATTDEF",
            "DIMENSION",
            "ARC_DIMENSION",
            "LEADER",
            "MULTILEADER",
            "MLEADER",
            "TOLERANCE",
            "HATCH",
            "POINT",
            "VIEWPORT",
            "XLINE",
            "RAY",
            "WIPEOUT",
            "ACAD_TABLE",
            "SHAPE");

    private final DxfFile file;
    private final DrawingSettings settings;
    private final StrokePen pen;
    private final DxfShapes shapes;
    private final Map<String, Integer> notes = new TreeMap<>();
    private final Map<String, Integer> layersOff = new TreeMap<>();
    private int invisible;
    private int paper;
    private int count;

    DxfWalk(DxfFile file, DrawingSettings settings, StrokePen pen) {
        this.file = file;
        this.settings = settings;
        this.pen = pen;
        this.shapes = new DxfShapes(pen);
    }

    void run(AffineMap toMetres) {
        Placement top = new Placement(toMetres, "", "colour:7", "", false, 0);
        file.entities().forEach(entity -> entity(entity, top));
    }

    List<Stroke> strokes() {
        return pen.strokes().stream()
                .map(stroke -> new Stroke(stroke.path().withRequirement(settings.requirement()), stroke.origin()))
                .toList();
    }

    List<Caution> cautions() {
        List<Caution> cautions = new ArrayList<>();
        add(cautions, notes, "entities-skipped", "entities left out that are not cut: {names}");
        add(cautions, layersOff, "layers-hidden", "entities left out on layers that are off or frozen: {names}");
        if (shapes.fitted() > 0) {
            cautions.add(Caution.warning(Message.of(
                            "spline-fit-points",
                            "splines that have fit points only: {count}; the file does not hold the curve between"
                                    + " them, and the smooth curve through them was taken: compare it with the drawing")
                    .with("count", shapes.fitted())));
        }
        if (invisible > 0) {
            cautions.add(Caution.notice(Message.of("invisible-entities", "invisible entities left out: {count}")
                    .with("count", invisible)));
        }
        if (paper > 0) {
            cautions.add(Caution.notice(Message.of("paper-space", "entities of paper space left out: {count}")
                    .with("count", paper)));
        }
        return cautions;
    }

    private static void add(List<Caution> cautions, Map<String, Integer> counts, String code, String pattern) {
        if (!counts.isEmpty()) {
            List<String> names = counts.entrySet().stream()
                    .map(entry -> entry.getKey() + " (" + entry.getValue() + ")")
                    .toList();
            cautions.add(Caution.notice(Message.of(code, pattern)
                    .with(
                            "count",
                            counts.values().stream().mapToInt(Integer::intValue).sum())
                    .with("names", String.join(", ", names))));
        }
    }

    private void entity(Entity entity, Placement at) {
        count++;
        if (count > MAX_ENTITIES) {
            throw entity.fault(Message.of(
                            "too-many-entities", "the drawing has more than {limit} entities, those of blocks counted")
                    .with("limit", MAX_ENTITIES));
        }
        boolean isOfBlock = at.depth() > 0 && entity.layer().equals("0");
        String layer = isOfBlock ? at.layer() : entity.layer();
        DxfFile.Layer state = file.layer(layer);
        if (entity.whole(67, 0) == 1) {
            paper++;
        } else if (entity.whole(60, 0) == 1) {
            invisible++;
        } else if (entity.type().equals("INSERT")) {
            if (state.isFrozen()) {
                layersOff.merge(layer, 1, Integer::sum);
            } else {
                insert(entity, at, layer);
            }
        } else if (state.isFrozen() || state.isOff() || (isOfBlock && at.isOff())) {
            layersOff.merge(layer, 1, Integer::sum);
        } else {
            draw(entity, at, layer);
        }
    }

    private void draw(Entity entity, Placement at, String layer) {
        String colour = file.colour(entity, layer, at.colour());
        String name = at.block();
        Origin origin = new Origin("", name, List.of(layer), colour, entity.type(), entity.line());
        if (NOTES.contains(entity.type())) {
            notes.merge(entity.type(), 1, Integer::sum);
            return;
        }
        if (!CURVES.contains(entity.type())) {
            if (settings.use(origin) == LayerRule.Use.SKIP) {
                return;
            }
            throw entity.fault(Message.of(
                            "entity-not-cut",
                            "{type} on layer {layer} cannot be cut; turn it into lines and arcs, or skip it with"
                                    + " --layer")
                    .with("type", entity.type())
                    .withInput("layer", layer));
        }
        pen.origin(named(origin, layer));
        try {
            shapes.draw(entity, at.map());
        } catch (GeometryException e) {
            throw entity.fault(e.message());
        } catch (TextException e) {
            throw e.line() > 0 ? e : entity.fault(e.message());
        }
    }

    /** Name of an entity: its layer, unless that is the layer 0 or the entity is of a block. */
    private static Origin named(Origin origin, String layer) {
        if (!origin.group().isEmpty()) {
            return origin.named(origin.group() + " line " + origin.line());
        }
        return layer.equals("0") ? origin : origin.named(layer + " line " + origin.line());
    }

    private void insert(Entity insert, Placement at, String layer) {
        String name = insert.text(2, "");
        DxfFile.Block block = file.block(name)
                .orElseThrow(() -> insert.fault(Message.of("block-unknown", "INSERT of the unknown block {block}")
                        .withInput("block", name)));
        if (at.depth() >= DEEPEST) {
            throw insert.fault(Message.of(
                            "block-too-deep",
                            "blocks are nested more than {limit} deep; the block {block} may contain itself")
                    .with("limit", DEEPEST)
                    .withInput("block", name));
        }
        int columns = Math.max(1, insert.whole(70, 1));
        int rows = Math.max(1, insert.whole(71, 1));
        if ((long) columns * rows > MAX_ARRAY) {
            throw insert.fault(Message.of("array-too-large", "the array of {block} has more than {limit} places")
                    .withInput("block", name)
                    .with("limit", MAX_ARRAY));
        }
        AffineMap base = Placement.extrusion(insert)
                .with(AffineMap.translate(insert.number(10, 0), insert.number(20, 0)))
                .with(AffineMap.rotate(insert.number(50, 0)));
        AffineMap inner = scale(insert)
                .with(AffineMap.translate(
                        -block.head().number(10, 0), -block.head().number(20, 0)));
        boolean isOff = file.layer(layer).isOff();
        String colour = file.colour(insert, layer, at.colour());
        for (int row = 0; row < rows; row++) {
            for (int column = 0; column < columns; column++) {
                AffineMap place = AffineMap.translate(column * insert.number(44, 0), row * insert.number(45, 0));
                AffineMap map = at.map().with(base.with(place).with(inner));
                Placement within = new Placement(map, layer, colour, block.name(), isOff, at.depth() + 1);
                block.entities().forEach(entity -> entity(entity, within));
            }
        }
    }

    private static AffineMap scale(Entity insert) {
        double x = insert.number(41, 1);
        double y = insert.number(42, 1);
        if (x == 0 || y == 0) {
            throw insert.fault(Message.of("insert-scale", "the scale of the INSERT is 0"));
        }
        return AffineMap.scale(x, y);
    }
}
