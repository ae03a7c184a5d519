package dev.waterjet.circuit;

import static dev.waterjet.Refusals.assertRefused;
import static dev.waterjet.circuit.Circuits.around380;
import static dev.waterjet.circuit.Circuits.attenuator;
import static dev.waterjet.circuit.Circuits.closing;
import static dev.waterjet.circuit.Circuits.line;
import static dev.waterjet.circuit.Circuits.orifice;
import static dev.waterjet.circuit.Circuits.pump;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.seconds;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.waterjet.evidence.Caution;
import dev.waterjet.hydraulics.Intensifier;
import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.Kind;
import java.util.List;
import org.junit.jupiter.api.Test;

class CircuitRefusalsTest {

    @Test
    void circuitNeedsASource() {
        assertThatThrownBy(() -> around380()
                        .vessel("v", attenuator(1))
                        .head("v", orifice(0.3))
                        .build())
                .isInstanceOf(DomainException.class);
    }

    @Test
    void everyNodeIsJoinedToTheOthers() {
        assertThatThrownBy(() -> around380()
                        .reservoir("r")
                        .line("r", "a", line(4.8, 14.4, 5))
                        .head("elsewhere", orifice(0.3))
                        .build())
                .isInstanceOf(DomainException.class);
        assertThatThrownBy(() -> around380().reservoir("r").line("r", "r", line(4.8, 14.4, 5)))
                .isInstanceOf(DomainException.class);
    }

    @Test
    void intensifierNeedsAnAttenuator() {
        IntensifierDrive drive =
                PumpDrive.of(Intensifier.of(20, Kind.VOLUME.of(1e-3 * 0.1)), megapascals(380), Kind.FREQUENCY.of(1));
        assertThatThrownBy(() -> around380()
                        .pump("p", drive)
                        .line("p", "h", line(4.8, 14.4, 5))
                        .head("h", orifice(0.3))
                        .build())
                .isInstanceOf(DomainException.class);
    }

    @Test
    void pumpAgainstClosedHeadsHasNoSteadyState() {
        Circuit circuit = around380()
                .vessel("v", attenuator(1))
                .pump("v", PumpDrive.of(pump(3, 0)))
                .shutHead("v", orifice(0.3))
                .build();
        assertRefused(() -> circuit.run(seconds(1)), "no-steady-state");
        assertRefused(circuit::ripple, "no-steady-state");
    }

    /** Without relief valve the pressure rises until the equation of state ends. */
    @Test
    void pressureThatRunsAwayIsRefused() {
        Circuit circuit = around380()
                .vessel("v", attenuator(0.2))
                .pump("v", PumpDrive.of(pump(3, 0)))
                .head("v", orifice(0.33), closing(0.1, 0))
                .build();
        assertThatThrownBy(() -> circuit.run(seconds(2)))
                .isInstanceOfSatisfying(
                        DomainException.class,
                        refusal -> assertThat(refusal.parameters().toString())
                                .contains("absolute pressure in the vessel"));
    }

    @Test
    void rippleNeedsOneDirectDrivePump() {
        Circuit circuit = around380()
                .reservoir("r")
                .line("r", "h", line(4.8, 14.4, 5))
                .head("h", orifice(0.3))
                .build();
        assertRefused(circuit::ripple, "ripple-not-periodic");
    }

    @Test
    void namesAndRunsAreChecked() {
        Circuit circuit = around380()
                .reservoir("r")
                .line("r", "h", line(4.8, 14.4, 5))
                .head("h", orifice(0.3))
                .build();
        assertRefused(() -> around380().reservoir(" ").build(), "not-a-node");
        assertRefused(() -> circuit.run(seconds(0.01)).pressure("x"), "unknown-node");
        assertThatThrownBy(() -> circuit.run(seconds(1e6))).isInstanceOf(DomainException.class);
        assertThatThrownBy(() -> circuit.run(seconds(0))).isInstanceOf(DomainException.class);
        assertThatThrownBy(() -> circuit.run(seconds(1), 0)).isInstanceOf(DomainException.class);
        assertThatThrownBy(() -> closing(-1, 0)).isInstanceOf(DomainException.class);
        assertThatThrownBy(() -> new ValveEvent(seconds(0), seconds(0), 1.1)).isInstanceOf(DomainException.class);
    }

    /** A short run from rest of a line that a shut head suddenly opens far below the reference says so. */
    @Test
    void farFromTheReferenceIsSaid() {
        Circuit circuit = around380()
                .reservoir("r")
                .line("r", "h", line(2.4, 9.6, 20))
                .shutHead("h", orifice(2.0), ValveEvent.opening(seconds(0), seconds(0)))
                .build();
        assertThat(circuit.run(seconds(0.1)).cautions())
                .extracting(Caution::code)
                .contains("far-from-reference");
    }

    @Test
    void motionThatBeginsEndsTheOneBefore() {
        Opening opening = new Opening(1, List.of(ValveEvent.opening(seconds(1.5), seconds(0.5)), closing(1, 1)));
        assertThat(opening.at(0.5)).isEqualTo(1);
        assertThat(opening.at(1.25)).isEqualTo(0.75);
        assertThat(opening.at(1.5)).isEqualTo(0.5);
        assertThat(opening.at(1.75)).isEqualTo(0.75);
        assertThat(opening.at(3)).isEqualTo(1);
    }
}
