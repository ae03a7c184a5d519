package dev.waterjet.surface;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.NoSolutionException;
import dev.waterjet.measure.QuantityText;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import javax.measure.quantity.Speed;

/**
 * Fastest feed rate that meets all requirements of a cut surface, and the feed rates that each of them allows.
 *
 * @param ranges feed rates that each requirement allows, at least one range
 */
public record FastestFeed(List<Range> ranges) implements Described {

    /** Requirement that limits the feed rate. */
    public enum Requirement {
        /** A cut quality: always required. */
        QUALITY("cut quality"),
        /** A range of ISO 9013 for perpendicularity. */
        PERPENDICULARITY_RANGE("perpendicularity range"),
        /** A range of ISO 9013 for the profile height. */
        PROFILE_HEIGHT_RANGE("profile height range"),
        /** A maximum taper per side of an upright head, to either side. */
        TAPER("taper per side"),
        /** A maximum roughness at the exit. */
        ROUGHNESS("roughness at the exit"),
        /** A maximum error of the bottom edge on the smallest arc. */
        LAG_ON_ARC("lag error on an arc"),
        /** A maximum feed rate. */
        MAXIMUM_FEED("maximum feed rate");

        private final String label;

        Requirement(String label) {
            this.label = label;
        }

        /** {@return the name for people, in lower case} */
        public String label() {
            return label;
        }
    }

    /**
     * Feed rates that one requirement allows.
     *
     * @param requirement the requirement
     * @param minimum minimum feed rate; empty if a slower cut meets the requirement too
     * @param maximum maximum feed rate; empty if no feed rate meets the requirement
     */
    public record Range(Requirement requirement, Optional<Estimate<Speed>> minimum, Optional<Estimate<Speed>> maximum)
            implements Described {

        /**
         * Checks the components.
         *
         * @param requirement the requirement
         * @param minimum minimum feed rate, if any
         * @param maximum maximum feed rate, if any
         */
        public Range {
            Objects.requireNonNull(requirement, "requirement");
            Objects.requireNonNull(minimum, "minimum");
            Objects.requireNonNull(maximum, "maximum");
        }

        private double minimumSi() {
            return minimum.map(Estimate::si).orElse(0.0);
        }

        /** A requirement that no feed rate meets allows 0. */
        private double maximumSi() {
            return maximum.map(Estimate::si).orElse(0.0);
        }

        @Override
        public Map<String, Object> describe() {
            return Description.of("feed range")
                    .put("requirement", requirement)
                    .put("minimum", minimum)
                    .put("maximum", maximum)
                    .map();
        }
    }

    /**
     * Checks the component.
     *
     * @throws NoSolutionException if there is no range; code {@code no-requirement}
     * @param ranges feed rates that each requirement allows, at least one range
     */
    public FastestFeed {
        Objects.requireNonNull(ranges, "ranges");
        ranges = List.copyOf(ranges);
        if (ranges.isEmpty()) {
            throw new NoSolutionException(Message.of("no-requirement", "no requirement limits the feed rate"));
        }
    }

    private Range slowest() {
        return Collections.min(ranges, Comparator.comparingDouble(Range::maximumSi));
    }

    /** {@return the maximum feed rate that all requirements allow; empty if there is none} */
    public Optional<Estimate<Speed>> feed() {
        return conflicting().isPresent() ? Optional.empty() : slowest().maximum();
    }

    /** {@return the requirement with the lowest maximum feed rate, or the first that no feed rate meets} */
    public Requirement governing() {
        return slowest().requirement();
    }

    /** {@return a requirement whose minimum feed rate is above the maximum of the governing one; empty if there is none} */
    public Optional<Requirement> conflicting() {
        double fastest = slowest().maximumSi();
        return ranges.stream()
                .filter(range -> range.minimumSi() > fastest)
                .map(Range::requirement)
                .findFirst();
    }

    /**
     * Returns the feed rates that a requirement allows.
     *
     * @param requirement the requirement
     * @return the range; empty if it was not required
     */
    public Optional<Range> range(Requirement requirement) {
        Objects.requireNonNull(requirement, "requirement");
        return ranges.stream()
                .filter(range -> range.requirement() == requirement)
                .findFirst();
    }

    @Override
    public Map<String, Object> describe() {
        Description description = Description.of("fastest feed")
                .put("governing", governing())
                .put("feed", feed())
                .put("ranges", ranges);
        conflicting().ifPresent(requirement -> description.put("conflicting", requirement));
        return description.map();
    }

    @Override
    public String toString() {
        String governing = governing().label();
        return feed().map(feed -> QuantityText.forPeople(Kind.SPEED, feed.si(), feed.standardUncertaintySi())
                        + ", governed by " + governing)
                .orElse("no feed rate meets " + governing
                        + conflicting().map(other -> " and " + other.label()).orElse(""));
    }
}
