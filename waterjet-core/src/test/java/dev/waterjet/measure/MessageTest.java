package dev.waterjet.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.entry;

import dev.waterjet.ValueContract;
import org.junit.jupiter.api.Test;

class MessageTest {

    private static Message slot(double widthM) {
        return Message.of("slot-too-narrow", "the slot {name} is {width} wide, {count} {ratio}")
                .withInput("name", "cable\u0007")
                .with("width", Kind.LENGTH, widthM, Units.MILLIMETRE)
                .with("count", 3)
                .with("ratio", 0.5);
    }

    @Test
    void isAValue() {
        ValueContract.of(() -> slot(0.0012))
                .has("code", Message::code, "slot-too-narrow")
                .differs("width", slot(0.0013))
                .prints("slot-too-narrow", "1.2 mm")
                .check();
    }

    @Test
    void theSentenceHoldsTheParametersInTradeUnits() {
        assertThat(slot(0.0012).text()).isEqualTo("the slot \"cable?\" is 1.2 mm wide, 3 0.5");
    }

    @Test
    void theParametersAreInSiWithTheUnitInTheKey() {
        assertThat(slot(0.0012).parameters())
                .containsExactly(
                        entry("name", "cable\u0007"),
                        entry("width_m", 0.0012),
                        entry("count", 3L),
                        entry("ratio", 0.5));
    }

    @Test
    void aPlaceWithoutParameterStays() {
        assertThat(Message.of("some-code", "a {b}").with("c", 1).text()).isEqualTo("a {b}");
    }
}
