package dev.waterjet.examples.svg;

import dev.waterjet.measure.Message;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Count of things of one kind, with the names of the first. */
final class Tally {

    private static final int NAMES = 8;

    private final List<String> names = new ArrayList<>();
    private int count;

    void add(String name) {
        count++;
        if (count <= NAMES) {
            names.add(name);
        }
    }

    /** The message with count and names; empty if nothing was counted. */
    Optional<Message> message(String code, String pattern) {
        return count == 0
                ? Optional.empty()
                : Optional.of(Message.of(code, pattern)
                        .with("count", count)
                        .with("names", String.join(", ", names) + (count > NAMES ? ", ..." : "")));
    }
}
