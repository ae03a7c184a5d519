package dev.waterjet;

import static org.assertj.core.api.Assertions.catchThrowableOfType;

import dev.waterjet.measure.TextException;
import dev.waterjet.measure.WaterjetException;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;

/** Refusals as tests compare them: by code and place, never by prose. */
public final class Refusals {

    private Refusals() {}

    /** Returns the code of a refusal, after its place if it has one: {@code "line 3, column 1: unknown-word"}. */
    public static String of(ThrowingCallable call) {
        WaterjetException refusal = catchThrowableOfType(WaterjetException.class, call);
        if (refusal == null) {
            return "no refusal";
        }
        return refusal instanceof TextException text && text.line() > 0
                ? "line " + text.line() + ", column " + text.column() + ": " + text.code()
                : refusal.code();
    }
}
