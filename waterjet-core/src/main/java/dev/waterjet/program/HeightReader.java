package dev.waterjet.program;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.Units;
import java.util.function.Consumer;

/** Height of the head, by its Z words. */
final class HeightReader {

    private static final double SAME_M = 1e-9;

    /** Not a number where the program does not state it. */
    private double z;

    private double shiftZ;

    void move(BlockWords words, ModalState state, boolean isOn, Consumer<Message> found) {
        int word = words.find('Z');
        if (word < 0) {
            return;
        }
        double number = state.metres(words, word);
        if (state.isShift) {
            shiftZ = Double.isNaN(z) ? 0 : z - number;
            z = Double.isNaN(z) ? number : z;
            return;
        }
        double to = state.machinePlaceWord >= 0 ? Double.NaN : state.isIncremental ? z + number : number + shiftZ;
        double change = Math.abs(to - z);
        if (isOn && Double.isNaN(change)) {
            found.accept(Message.of("height-with-jet-on", "{word} moves the head up or down while the jet is on")
                    .with("word", words.written(word)));
        } else if (isOn && change > SAME_M) {
            found.accept(Message.of(
                            "height-with-jet-on",
                            "Z moves while the jet is on; the stand-off distance changes by {change}")
                    .with("change", Kind.LENGTH, change, Units.MILLIMETRE));
        }
        z = to;
    }
}
