package dev.waterjet;

import static org.assertj.core.api.Assertions.assertThat;

import dev.waterjet.measure.Described;
import java.io.IOException;
import java.io.ObjectStreamException;
import java.io.Serializable;
import java.util.Optional;

/**
 * Attack on a value by its serial form. Bytes are refused with an {@link ObjectStreamException}, or they make a value that
 * equals its own copy and can be described; a double that is not a number is never accepted, and zero with a minus sign
 * makes the same value as zero.
 */
final class ForgedBytes {

    /** Of a long array not every element is forged. */
    private static final int MAX_PLACES = 100;

    private final Serializable value;
    private final SerialForm form;

    ForgedBytes(Serializable value) {
        this.value = value;
        try {
            this.form = SerialForm.of(value);
        } catch (IOException e) {
            throw new AssertionError(value + " cannot be written", e);
        }
    }

    void check() {
        try {
            accepts("a form without fields", SerialForm.withoutFields(value.getClass()));
        } catch (IOException e) {
            throw new AssertionError(e);
        }
        int step = 1 + form.doubles() / MAX_PLACES;
        for (int place = 0; place < form.doubles(); place += step) {
            forge(place);
        }
    }

    private void forge(int place) {
        String what = form.value(place) + " as double " + place;
        assertThat(accepts(what + " made NaN", form.with(place, Double.NaN)))
                .as("%s: %s made NaN", value.getClass(), what)
                .isEmpty();
        accepts(what + " made a huge negative number", form.with(place, -1e300));
        accepts(what + " made infinite", form.with(place, Double.POSITIVE_INFINITY));
        Optional<Object> zero = accepts(what + " made 0", form.with(place, 0.0));
        Optional<Object> minusZero = accepts(what + " made -0", form.with(place, -0.0));
        assertThat(minusZero.isPresent()).as("-0.0 is accepted if 0.0 is").isEqualTo(zero.isPresent());
        zero.ifPresent(one -> ValueContract.isTheSame(what + " made -0", one, minusZero.orElseThrow()));
    }

    /** The value that the bytes make, if they are not refused. */
    private Optional<Object> accepts(String what, byte[] bytes) {
        Object read;
        try {
            read = SerialForm.read(bytes);
        } catch (ObjectStreamException refused) {
            return Optional.empty();
        } catch (IOException | ClassNotFoundException | RuntimeException e) {
            throw new AssertionError(value.getClass() + ", " + what + ": refused by " + e, e);
        }
        try {
            ValueContract.isTheSame(
                    what, read, SerialForm.read(SerialForm.of(read).bytes()));
            assertThat(read instanceof Described described ? described.describe() : read)
                    .isNotNull();
        } catch (IOException | ClassNotFoundException | RuntimeException e) {
            throw new AssertionError(value.getClass() + ", " + what + ": accepted as a value that fails", e);
        }
        return Optional.of(read);
    }
}
