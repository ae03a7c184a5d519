package dev.waterjet.examples.svg;

import dev.waterjet.measure.Message;
import dev.waterjet.measure.TextException;
import java.util.Arrays;

/** Starts of the lines of a text, to name a place by line and column. */
final class Lines {

    private int[] starts = new int[64];
    private int count = 1;

    Lines(String text) {
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c == '\n' || (c == '\r' && (i + 1 == text.length() || text.charAt(i + 1) != '\n'))) {
                if (count == starts.length) {
                    starts = Arrays.copyOf(starts, 2 * count);
                }
                starts[count++] = i + 1;
            }
        }
    }

    /** Place of a line and column, each from 1. */
    int place(int line, int column) {
        return starts[Math.min(Math.max(line, 1), count) - 1] + column - 1;
    }

    TextException fault(int place, String text) {
        return fault(place, Message.of("svg-syntax", "{fault}").with("fault", text));
    }

    TextException fault(int place, Message message) {
        int found = Arrays.binarySearch(starts, 0, count, place);
        int line = found >= 0 ? found : -found - 2;
        return new TextException(line + 1, place - starts[line] + 1, message);
    }
}
