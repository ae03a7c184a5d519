package dev.waterjet.calibrate;

import dev.waterjet.calibrate.CutNumbers.Attribute;
import dev.waterjet.calibrate.TestCut.Test;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * Checked content of a test cut, and its serial form.
 *
 * @param test kind of test
 * @param jet the jet
 * @param numbers measured numbers
 * @param isSeparated whether the plate was separated at the feed rate
 * @param label label
 * @param attributes further columns
 */
record CutValues(
        Test test, AbrasiveJet jet, CutNumbers numbers, boolean isSeparated, String label, List<Attribute> attributes)
        implements Serializable {

    CutValues {
        Objects.requireNonNull(test, "test");
        Objects.requireNonNull(jet, "jet");
        Objects.requireNonNull(numbers, "numbers");
        Objects.requireNonNull(label, "label");
        attributes = List.copyOf(attributes);
        if (test != Test.GRADED) {
            Require.atMost("quality index", numbers.index().upper(), 1, Units.ONE, "of a " + test.text() + " test");
        }
        if (test != Test.INTERVAL) {
            Require.atMost(
                    "failed feed rate",
                    numbers.feedMPerS().upper(),
                    numbers.feedMPerS().lower(),
                    Units.MILLIMETRE_PER_MINUTE,
                    "only an interval has two");
        }
        if (test != Test.DEPTH) {
            Require.atMost(
                    "upper thickness",
                    numbers.thicknessM().upper(),
                    numbers.thicknessM().lower(),
                    Units.MILLIMETRE,
                    "only a depth has two");
        }
    }

    boolean isMeasured() {
        return test != Test.TRIAL
                && numbers.thicknessM().isExact()
                && numbers.index().isExact()
                && numbers.feedMPerS().isExact();
    }

    Map<String, String> attributeMap() {
        Map<String, String> all = new LinkedHashMap<>();
        attributes.forEach(attribute -> all.put(attribute.name(), attribute.text()));
        return Collections.unmodifiableMap(all);
    }

    /** The attributes with one in place of an older one of its name. */
    List<Attribute> withAttribute(String name, String text) {
        Map<String, String> all = new LinkedHashMap<>(attributeMap());
        all.put(Objects.requireNonNull(name, "name"), Objects.requireNonNull(text, "text"));
        List<Attribute> list = new ArrayList<>();
        all.forEach((key, value) -> list.add(new Attribute(key, value)));
        return list;
    }

    Map<String, Object> describe() {
        return Description.of("test cut")
                .put("test", test)
                .put("jet", jet)
                .put("thickness", Kind.LENGTH, numbers.thicknessM().lower())
                .put("upper_thickness", Kind.LENGTH, numbers.thicknessM().upper())
                .put("index", numbers.index().lower())
                .put("upper_index", numbers.index().upper())
                .put("feed", Kind.SPEED, numbers.feedMPerS().lower())
                .put("failed_feed", Kind.SPEED, numbers.feedMPerS().upper())
                .put("separated", isSeparated)
                .put("relative_deviation", numbers.deviations().relative())
                .put("reading_deviation", Kind.LENGTH, numbers.deviations().readingM())
                .put("label", label)
                .put("attributes", Map.<String, Object>copyOf(attributeMap()))
                .map();
    }

    private Object readResolve() {
        return new TestCut(this);
    }
}
