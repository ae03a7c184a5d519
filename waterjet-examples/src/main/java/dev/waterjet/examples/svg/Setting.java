package dev.waterjet.examples.svg;

import dev.waterjet.examples.drawing.AffineMap;
import dev.waterjet.quality.EdgeRequirement;
import java.util.List;

/**
 * State that an element hands down to those within it.
 *
 * @param map map to metres
 * @param requirement requirement on the edges
 * @param isVisible whether shapes are visible
 * @param stroke colour of lines
 * @param fill colour of areas
 * @param groups names of the groups around, the outermost first
 * @param group name of the innermost group
 * @param name name that a reference gives to the shapes within; empty if there is none
 * @param depth number of elements around, references counted
 */
record Setting(
        AffineMap map,
        EdgeRequirement requirement,
        boolean isVisible,
        String stroke,
        String fill,
        List<String> groups,
        String group,
        String name,
        int depth) {

    Setting with(AffineMap other) {
        return new Setting(other, requirement, isVisible, stroke, fill, groups, group, name, depth);
    }

    Setting with(EdgeRequirement other) {
        return new Setting(map, other, isVisible, stroke, fill, groups, group, name, depth);
    }

    Setting painted(boolean isShown, String line, String area) {
        return new Setting(map, requirement, isShown, line, area, groups, group, name, depth + 1);
    }

    Setting within(List<String> all, String innermost) {
        return new Setting(map, requirement, isVisible, stroke, fill, all, innermost, name, depth);
    }

    Setting named(String reference) {
        return new Setting(map, requirement, isVisible, stroke, fill, groups, group, reference, depth);
    }
}
