package dev.waterjet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowable;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.TextException;
import dev.waterjet.measure.WaterjetException;
import java.util.Map;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;

/** Refusals as tests compare them: by type, code, place and parameters, never by prose. */
public final class Refusals {

    private static final double ROUNDING = 1e-9;

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

    /** A call is refused with a code. */
    public static WaterjetException assertRefused(ThrowingCallable call, String code) {
        Throwable thrown = catchThrowable(call);
        assertThat(thrown).isInstanceOf(WaterjetException.class);
        WaterjetException refusal = (WaterjetException) thrown;
        assertThat(refusal.code()).as(refusal.getMessage()).isEqualTo(code);
        return refusal;
    }

    /** A call is refused with a code, for a quantity and its limit in SI. */
    public static WaterjetException assertRefused(ThrowingCallable call, String code, String quantity, double limitSi) {
        return assertRefused(call, code, quantity, limitSi, ROUNDING);
    }

    /** A call is refused with a code, for a quantity and its limit in SI, within a relative tolerance. */
    public static WaterjetException assertRefused(
            ThrowingCallable call, String code, String quantity, double limitSi, double relative) {
        WaterjetException refusal = assertRefused(call, code);
        assertThat(refusal).isInstanceOf(DomainException.class);
        assertThat(((DomainException) refusal).quantity()).isEqualTo(quantity);
        assertThat(limitSi(refusal)).as(refusal.getMessage()).isCloseTo(limitSi, within(relative * Math.abs(limitSi)));
        return refusal;
    }

    /** The limit of a refusal, in SI. */
    public static double limitSi(WaterjetException refusal) {
        return refusal.parameters().entrySet().stream()
                .filter(parameter -> parameter.getKey().matches("limit(_.*)?"))
                .map(Map.Entry::getValue)
                .mapToDouble(value -> (double) value)
                .findFirst()
                .orElseThrow();
    }

    /** Returns the refusal by which a call ends. */
    public static <X extends WaterjetException> X refusal(Class<X> type, ThrowingCallable call) {
        Throwable thrown = catchThrowable(call);
        assertThat(thrown).isInstanceOf(type);
        return type.cast(thrown);
    }

    /** Returns the code of the refusal by which a call ends. */
    public static String codeOf(ThrowingCallable call) {
        return refusal(WaterjetException.class, call).code();
    }
}
