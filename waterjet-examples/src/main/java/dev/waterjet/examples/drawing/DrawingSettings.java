package dev.waterjet.examples.drawing;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Measures;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.quality.EdgeRequirement;
import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Length;

/**
 * Settings with which a drawing is read.
 *
 * @param chordTolerance largest distance of a curve from the arcs that replace it, above 0
 * @param join largest gap between two ends that are joined, 0 or more
 * @param unit length of one unit of the drawing; empty to take the drawing's own
 * @param width width of all that is cut; empty to leave the size as it is
 * @param requirement requirement where no layer rule states another
 * @param layers layer rules; the last that is about an entity decides its use
 */
public record DrawingSettings(
        Quantity<Length> chordTolerance,
        Quantity<Length> join,
        Optional<Quantity<Length>> unit,
        Optional<Quantity<Length>> width,
        EdgeRequirement requirement,
        List<LayerRule> layers) {

    private static final double MAX_JOIN_M = 0.01;

    /**
     * Checks the settings.
     *
     * @param chordTolerance largest distance of a curve from the arcs that replace it, above 0
     * @param join largest gap between two ends that are joined, 0 to 10 mm
     * @param unit length of one unit of the drawing, above 0
     * @param width width of all that is cut, above 0
     * @param requirement requirement where no layer rule states another
     * @param layers layer rules
     */
    public DrawingSettings {
        Require.positive("chord tolerance", Kind.LENGTH.si(chordTolerance), Units.MILLIMETRE);
        Require.between("gap that is joined", Kind.LENGTH.si(join), 0, MAX_JOIN_M, Units.MILLIMETRE, "0 mm to 10 mm");
        unit.ifPresent(length -> Require.positive("unit of the drawing", Kind.LENGTH.si(length), Units.MILLIMETRE));
        width.ifPresent(length -> Require.positive("width of the drawing", Kind.LENGTH.si(length), Units.MILLIMETRE));
        layers = List.copyOf(layers);
    }

    /** {@return 0.01 mm for curves and gaps, the drawing's own unit and size, medium cut quality, no layer rules} */
    public static DrawingSettings defaults() {
        return new DrawingSettings(
                Measures.millimetres(0.01),
                Measures.millimetres(0.01),
                Optional.empty(),
                Optional.empty(),
                EdgeRequirement.defaults(),
                List.of());
    }

    /**
     * Returns these settings with another chord tolerance.
     *
     * @param tolerance largest distance of a curve from the arcs that replace it, above 0
     * @return the settings
     */
    public DrawingSettings withChordTolerance(Quantity<Length> tolerance) {
        return new DrawingSettings(tolerance, join, unit, width, requirement, layers);
    }

    /**
     * Returns these settings with another largest gap.
     *
     * @param gap largest gap between two ends that are joined, 0 to 10 mm
     * @return the settings
     */
    public DrawingSettings withJoin(Quantity<Length> gap) {
        return new DrawingSettings(chordTolerance, gap, unit, width, requirement, layers);
    }

    /**
     * Returns these settings with a unit.
     *
     * @param length length of one unit of the drawing, above 0
     * @return the settings
     */
    public DrawingSettings withUnit(Quantity<Length> length) {
        return new DrawingSettings(chordTolerance, join, Optional.of(length), width, requirement, layers);
    }

    /**
     * Returns these settings with a width.
     *
     * @param length width of all that is cut, above 0
     * @return the settings
     */
    public DrawingSettings withWidth(Quantity<Length> length) {
        return new DrawingSettings(chordTolerance, join, unit, Optional.of(length), requirement, layers);
    }

    /**
     * Returns these settings with another requirement.
     *
     * @param other requirement where no layer rule states another
     * @return the settings
     */
    public DrawingSettings withRequirement(EdgeRequirement other) {
        return new DrawingSettings(chordTolerance, join, unit, width, other, layers);
    }

    /**
     * Returns these settings with layer rules.
     *
     * @param rules the rules; the last that is about an entity decides its use
     * @return the settings
     */
    public DrawingSettings withLayers(List<LayerRule> rules) {
        return new DrawingSettings(chordTolerance, join, unit, width, requirement, rules);
    }

    /** {@return the chord tolerance in m} */
    public double chordToleranceM() {
        return Kind.LENGTH.si(chordTolerance);
    }

    /** {@return the largest gap that is joined, in m} */
    public double joinM() {
        return Kind.LENGTH.si(join);
    }

    /**
     * Returns the use of an entity by these rules: that of the last rule about it that is no mere name.
     *
     * @param origin the entity
     * @return its use; to cut if no rule is about it
     */
    public LayerRule.Use use(Origin origin) {
        LayerRule.Use use = LayerRule.Use.CUT;
        for (LayerRule rule : layers) {
            if (rule.use() != LayerRule.Use.NAME && rule.isAbout(origin)) {
                use = rule.use();
            }
        }
        return use;
    }

    Optional<String> name(Origin origin) {
        return layers.stream()
                .filter(rule -> rule.use() == LayerRule.Use.NAME && rule.isAbout(origin))
                .map(LayerRule::name)
                .reduce((first, second) -> second);
    }

    /** Requirement of an entity; the entity's own, unless a rule states a quality. */
    EdgeRequirement requirement(Origin origin, EdgeRequirement own) {
        EdgeRequirement result = own;
        for (LayerRule rule : layers) {
            if (rule.quality().isPresent() && rule.isAbout(origin)) {
                result = own.withQuality(rule.quality().get());
            }
        }
        return result;
    }
}
