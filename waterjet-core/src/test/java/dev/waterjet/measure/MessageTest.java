package dev.waterjet.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.entry;

import dev.waterjet.ValueContract;
import java.util.Map;
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
        assertThat(Message.of("some-code", "a {b}").text()).isEqualTo("a {b}");
        assertThat(Message.of("some-code", "a {b}").with("b", 1).pattern()).isEqualTo("a {b}");
    }

    @Test
    void theSentenceCanBeShownInOtherUnits() {
        Message message = Message.of("some-code", "{length} at {feed}, {share} of {name}")
                .with("length", Kind.LENGTH, 0.0127, Units.MILLIMETRE)
                .with("feed", Kind.SPEED, 0.01, Units.MILLIMETRE_PER_MINUTE)
                .with("share", 0.5)
                .with("name", "3 mm");
        assertThat(message.text(Map.of(Units.MILLIMETRE, Units.INCH))).isEqualTo("0.5 in at 600 mm/min, 0.5 of 3 mm");
        assertThat(message.text(Map.of())).isEqualTo(message.text());
    }

    @Test
    void otherUnitsChangeNoParameter() {
        Message message = Message.of("some-code", "{length}").with("length", Kind.LENGTH, 0.0127, Units.MILLIMETRE);
        message.text(Map.of(Units.MILLIMETRE, Units.INCH));
        assertThat(message.parameters()).containsExactly(entry("length_m", 0.0127));
    }
}
