package dev.waterjet.examples.svg;

import dev.waterjet.examples.drawing.AffineMap;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Length;

/**
 * Map from the units of a drawing to metres, y upwards from the lower edge of the page, by the size of the root element against
 * its view box.
 *
 * @param map the map
 * @param unitM length of one unit in m
 * @param isStated whether the drawing states a size in a unit of length, against a view box
 */
record PageSize(AffineMap map, double unitM, boolean isStated) {

    static PageSize of(Tag root, Optional<Quantity<Length>> unit, double factor) {
        double metresPerPixel = Tag.MM_PER_PIXEL / 1000;
        double scaleX = 1;
        double scaleY = 1;
        double left = 0;
        double top = 0;
        double height;
        boolean hasBox = root.text("viewBox").isPresent();
        if (hasBox) {
            double[] box = box(root);
            left = box[0];
            top = box[1];
            height = box[3];
            scaleX = size(root, "width", box[2]) / box[2];
            scaleY = size(root, "height", box[3]) / box[3];
            String fit = root.text("preserveAspectRatio").orElse("").strip();
            if (!fit.startsWith("none")) {
                // one scale for both, so that all of the drawing fits the page, or covers it; one that is missing
                // follows
                scaleX = isSized(root, "width") ? scaleX : scaleY;
                scaleY = isSized(root, "height") ? scaleY : scaleX;
                scaleX = fit.endsWith("slice") ? Math.max(scaleX, scaleY) : Math.min(scaleX, scaleY);
                scaleY = scaleX;
            }
        } else {
            height = size(root, "height", 0);
        }
        double unitM = unit.map(Kind.LENGTH::si).orElse(scaleX * metresPerPixel);
        double unitYM = unit.map(Kind.LENGTH::si).orElse(scaleY * metresPerPixel);
        AffineMap map =
                AffineMap.scale(unitM * factor, -unitYM * factor).with(AffineMap.translate(-left, -top - height));
        if (!map.isFinite()) {
            throw root.fault(
                    Message.of("drawing-size", "the size of the drawing over that of its viewBox is no finite number"));
        }
        boolean isStated = unit.isPresent() || (hasBox && (isPhysical(root, "width") || isPhysical(root, "height")));
        return new PageSize(map, unitM * factor, isStated);
    }

    /** Left, top, width and height of a view box. */
    static double[] box(Tag tag) {
        Scanner in = tag.scan("viewBox");
        double[] box = {in.number(), in.number(), in.number(), in.number()};
        if (!(box[2] > 0) || !(box[3] > 0)) {
            throw in.fault("the viewBox has no size");
        }
        return box;
    }

    /** Whether the root states a size; a share of the window is none. */
    private static boolean isSized(Tag root, String attribute) {
        String text = root.text(attribute).orElse("%").strip();
        return !text.endsWith("%") && !text.equals("auto");
    }

    private static boolean isPhysical(Tag root, String attribute) {
        return root.text(attribute).orElse("").strip().matches(".*(mm|cm|Q|in|pt|pc)");
    }

    private static double size(Tag root, String attribute, double otherwise) {
        return isSized(root, attribute) ? root.length(attribute, otherwise) : otherwise;
    }
}
