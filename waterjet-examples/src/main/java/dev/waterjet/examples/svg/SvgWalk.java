package dev.waterjet.examples.svg;

import dev.waterjet.evidence.Caution;
import dev.waterjet.examples.drawing.AffineMap;
import dev.waterjet.examples.drawing.Colours;
import dev.waterjet.examples.drawing.DrawingSettings;
import dev.waterjet.examples.drawing.DrawingSource;
import dev.waterjet.examples.drawing.LayerRule;
import dev.waterjet.examples.drawing.Origin;
import dev.waterjet.examples.drawing.Stroke;
import dev.waterjet.examples.drawing.StrokePen;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.TextException;
import dev.waterjet.part.GeometryException;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Walk through the elements of a drawing that draws each visible shape. */
final class SvgWalk {

    private static final int MAX_ELEMENTS = 1_000_000;

    private static final Set<String> NEVER_DRAWN = Set.of(
            "defs",
            "symbol",
            "clipPath",
            "mask",
            "pattern",
            "marker",
            "linearGradient",
            "radialGradient",
            "filter",
            "metadata",
            "title",
            "desc",
            "style",
            "script",
            "animate",
            "animateTransform",
            "set");

    private static final Set<String> GROUPS = Set.of("g", "a");

    private static final Set<String> SHAPES = Set.of(
            "path",
            "rect",
            "circle",
            "ellipse",
            "line",
            "polyline",
            "polygon",
            "text",
            "image",
            "use",
            "foreignObject");

    private final SvgDocument document;
    private final DrawingSettings settings;
    private final double factor;
    private final StrokePen strokes;
    private final Pen pen;
    private final Map<Integer, EdgeRequirement> requirements = new HashMap<>();
    private final Deque<String> references = new ArrayDeque<>();
    private final Tally hidden = new Tally();
    private final Tally unpainted = new Tally();
    private final Tally clipped = new Tally();
    private int elements;

    SvgWalk(SvgDocument document, DrawingSettings settings, double factor) {
        this.document = document;
        this.settings = settings;
        this.factor = factor;
        this.strokes = new StrokePen(settings.chordToleranceM());
        this.pen = new Pen(strokes);
    }

    DrawingSource run() {
        Tag root = document.root();
        if (!root.isSvg() || !root.name().equals("svg")) {
            throw root.fault(Message.of("not-svg", "this is not SVG: its root is <{root}>")
                    .with("root", root.name()));
        }
        Map<String, String> style = document.styles().styleOf(root);
        if (root.text("transform").isPresent() || isMoved(style)) {
            throw root.fault(
                    Message.of("root-transform", "the root has a transform; put the drawing in a group that has it"));
        }
        PageSize page = PageSize.of(root, settings.unit(), factor);
        Setting top = new Setting(page.map(), settings.requirement(), true, "none", "black", List.of(), "", "", 0);
        Setting within = painted(root, style, quality(root, top));
        if (isShown(root, style)) {
            children(root, within);
        } else {
            hide(root);
        }
        List<Stroke> drawn = new ArrayList<>();
        List<Stroke> plain = strokes.strokes();
        for (int i = 0; i < plain.size(); i++) {
            Stroke stroke = plain.get(i);
            drawn.add(new Stroke(
                    stroke.path().withRequirement(requirements.getOrDefault(i, settings.requirement())),
                    stroke.origin()));
        }
        return new DrawingSource("SVG", drawn, page.unitM(), page.isStated(), cautions());
    }

    private List<Caution> cautions() {
        List<Caution> cautions = new ArrayList<>();
        hidden.message("hidden-shapes", "hidden shapes left out: {count} ({names})")
                .ifPresent(message -> cautions.add(Caution.notice(message)));
        unpainted
                .message("unpainted-shapes", "shapes that have neither stroke nor fill are cut: {count} ({names})")
                .ifPresent(message -> cautions.add(Caution.warning(message)));
        clipped.message("clip-ignored", "clip paths and masks are ignored, all of the shapes is cut: {count} ({names})")
                .ifPresent(message -> cautions.add(Caution.warning(message)));
        return cautions;
    }

    private static boolean isMoved(Map<String, String> style) {
        return style.entrySet().stream()
                .anyMatch(entry -> StyleSheet.DECISIVE.contains(entry.getKey())
                        && !entry.getKey().equals("display")
                        && !entry.getKey().equals("visibility")
                        && !entry.getValue().equalsIgnoreCase("none"));
    }

    private void children(Tag tag, Setting setting) {
        for (Tag child : tag.children()) {
            element(child, setting);
        }
    }

    private void element(Tag tag, Setting outer) {
        if (!tag.isSvg() || NEVER_DRAWN.contains(tag.name())) {
            return;
        }
        if (outer.depth() >= SvgDocument.deepest()) {
            throw SvgDocument.tooDeep(tag);
        }
        elements++;
        if (elements > MAX_ELEMENTS) {
            throw tag.fault(
                    Message.of("too-many-elements", "the drawing has more than {limit} elements, references counted")
                            .with("limit", MAX_ELEMENTS));
        }
        Map<String, String> style = document.styles().styleOf(tag);
        if (!isShown(tag, style)) {
            hide(tag);
            return;
        }
        if (value(tag, style, "clip-path").isPresent()
                || value(tag, style, "mask").isPresent()) {
            clipped.add(label(tag));
        }
        Setting inner = painted(tag, style, quality(tag, outer)).with(map(tag, style, outer));
        switch (tag.name()) {
            case "g", "a" -> children(tag, grouped(tag, inner));
            case "switch" -> chosen(tag).ifPresent(child -> element(child, grouped(tag, inner)));
            case "use" -> use(tag, inner);
            case "svg" -> fitted(tag, tag, inner.with(inner.map().with(corner(tag))));
            default -> draw(tag, inner);
        }
    }

    /** The first child of a switch that states no condition. */
    private static Optional<Tag> chosen(Tag tag) {
        return tag.children().stream()
                .filter(child -> child.isSvg()
                        && !child.name().equals("foreignObject")
                        && child.text("requiredExtensions").isEmpty()
                        && child.text("systemLanguage").isEmpty())
                .findFirst();
    }

    private static Optional<String> value(Tag tag, Map<String, String> style, String property) {
        return Optional.ofNullable(style.get(property))
                .or(() -> tag.text(property))
                .map(String::strip)
                .filter(text -> !text.equalsIgnoreCase("none"));
    }

    private static boolean isShown(Tag tag, Map<String, String> style) {
        return !style.getOrDefault("display", tag.text("display").orElse(""))
                .strip()
                .equalsIgnoreCase("none");
    }

    /** Counts the shapes within an element that is not displayed. */
    private void hide(Tag tag) {
        if (SHAPES.contains(tag.name())) {
            hidden.add(label(tag));
        }
        if (!NEVER_DRAWN.contains(tag.name())) {
            tag.children().forEach(this::hide);
        }
    }

    private static String label(Tag tag) {
        return tag.id().isEmpty() ? "line " + tag.line() : tag.id();
    }

    private AffineMap map(Tag tag, Map<String, String> style, Setting outer) {
        for (String property : style.keySet()) {
            boolean isMove = StyleSheet.DECISIVE.contains(property)
                    && !Set.of("display", "visibility", "transform").contains(property)
                    && !style.get(property).equalsIgnoreCase("none");
            boolean isGeometry = StyleSheet.GEOMETRY.contains(property) && !GROUPS.contains(tag.name());
            if (isMove || isGeometry) {
                throw tag.fault(Message.of(
                                "style-geometry", "the property {property} of a style is not read; use the attribute")
                        .withInput("property", property));
            }
        }
        AffineMap own =
                style.containsKey("transform") ? CssTransform.read(tag, style) : Transforms.read(tag.scan("transform"));
        AffineMap all = outer.map().with(CssTransform.aboutOrigin(tag, style, own));
        if (!all.isFinite()) {
            throw tag.fault(Message.of("transform-not-finite", "the transforms up to here have no finite numbers"));
        }
        return all;
    }

    private static Setting painted(Tag tag, Map<String, String> style, Setting outer) {
        String visibility = style.getOrDefault(
                        "visibility", tag.text("visibility").orElse(""))
                .strip()
                .toLowerCase(Locale.ROOT);
        boolean isVisible = switch (visibility) {
            case "visible" -> true;
            case "hidden", "collapse" -> false;
            default -> outer.isVisible();
        };
        return outer.painted(
                isVisible, paint(tag, style, "stroke", outer.stroke()), paint(tag, style, "fill", outer.fill()));
    }

    private static String paint(Tag tag, Map<String, String> style, String property, String inherited) {
        String own = style.getOrDefault(property, tag.text(property).orElse("inherit"))
                .strip();
        return own.isEmpty() || own.equalsIgnoreCase("inherit") ? inherited : own.toLowerCase(Locale.ROOT);
    }

    private static Setting quality(Tag tag, Setting outer) {
        if (tag.text("data-quality").isEmpty()) {
            return outer;
        }
        try {
            return outer.with(outer.requirement()
                    .withQuality(CutQuality.parse(tag.text("data-quality").orElse(""))));
        } catch (TextException e) {
            Scanner in = tag.scan("data-quality");
            throw in.fault(in.place(), e.message());
        }
    }

    private static Setting grouped(Tag tag, Setting setting) {
        List<String> groups = new ArrayList<>(setting.groups());
        String innermost = setting.group();
        for (String name : List.of(tag.id(), tag.label())) {
            if (!name.isEmpty()) {
                groups.add(name);
                innermost = name;
            }
        }
        return setting.within(groups, innermost);
    }

    private void use(Tag tag, Setting setting) {
        String reference = tag.reference();
        if (!reference.startsWith("#")) {
            throw tag.fault(Message.of("use-outside", "<use> refers to {reference}, which is outside the drawing")
                    .withInput("reference", reference));
        }
        String id = reference.substring(1);
        Tag target = document.find(id)
                .orElseThrow(
                        () -> tag.fault(Message.of("use-unknown", "<use> refers to {reference}, which does not exist")
                                .withInput("reference", reference)));
        if (references.contains(id) || references.size() > SvgDocument.deepest() / 2) {
            throw tag.fault(Message.of("use-circular", "<use> refers to {reference}, which contains it")
                    .withInput("reference", reference));
        }
        references.push(id);
        String name = !setting.name().isEmpty() ? setting.name() : !tag.id().isEmpty() ? tag.id() : "";
        Setting shifted = setting.with(setting.map().with(corner(tag))).named(name);
        if (target.name().equals("symbol")) {
            Map<String, String> style = document.styles().styleOf(target);
            fitted(tag, target, painted(target, style, quality(target, shifted)));
        } else {
            element(target, shifted);
        }
        references.pop();
    }

    private static AffineMap corner(Tag tag) {
        return AffineMap.translate(tag.length("x", 0), tag.length("y", 0));
    }

    /** A symbol or a drawing in the drawing with a view box fits it into the size of the reference, in its middle. */
    private void fitted(Tag use, Tag symbol, Setting setting) {
        Setting inner = setting;
        if (symbol.text("viewBox").isPresent()) {
            double[] box = PageSize.box(symbol);
            double width = use.length("width").orElseGet(() -> symbol.length("width", box[2]));
            double height = use.length("height").orElseGet(() -> symbol.length("height", box[3]));
            String fit = symbol.text("preserveAspectRatio").orElse("xMidYMid").strip();
            if (!fit.startsWith("xMidYMid") || fit.endsWith("slice")) {
                throw symbol.fault(
                        Message.of("symbol-fit", "preserveAspectRatio {fit} of a symbol is not read; use xMidYMid meet")
                                .withInput("fit", fit));
            }
            double scale = Math.min(width / box[2], height / box[3]);
            inner = inner.with(inner.map()
                    .with(AffineMap.translate(width / 2, height / 2))
                    .with(AffineMap.scale(scale, scale))
                    .with(AffineMap.translate(-box[0] - box[2] / 2, -box[1] - box[3] / 2)));
        }
        children(symbol, grouped(symbol, inner));
    }

    private void draw(Tag tag, Setting setting) {
        if (!setting.isVisible()) {
            hide(tag);
            return;
        }
        Origin origin = origin(tag, setting);
        if (!SvgShapes.isDrawn(tag) && settings.use(origin) == LayerRule.Use.SKIP) {
            return;
        }
        if (setting.stroke().equals("none") && setting.fill().equals("none")) {
            unpainted.add(label(tag));
        }
        int before = strokes.strokeCount();
        strokes.origin(origin);
        pen.use(setting.map());
        try {
            SvgShapes.draw(tag, pen);
        } catch (GeometryException e) {
            throw tag.fault(e.message());
        } catch (TextException e) {
            throw e.line() > 0 ? e : tag.fault(e.message());
        }
        for (int i = before; i < strokes.strokeCount(); i++) {
            requirements.put(i, setting.requirement());
        }
    }

    private static Origin origin(Tag tag, Setting setting) {
        String name = setting.name().isEmpty() ? tag.id() : setting.name();
        String paint = setting.stroke().equals("none") ? setting.fill() : setting.stroke();
        List<String> layers = new ArrayList<>(setting.groups());
        if (!tag.label().isEmpty()) {
            layers.add(tag.label());
        }
        return new Origin(name, setting.group(), layers, Colours.plain(paint), tag.name(), tag.line());
    }
}
