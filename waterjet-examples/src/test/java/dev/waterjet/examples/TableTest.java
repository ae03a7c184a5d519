package dev.waterjet.examples;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Units;
import java.io.IOException;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class TableTest {

    private final Table table = Table.of("Two jets")
            .words("name")
            .column("supply pressure", Kind.PRESSURE, Units.MEGAPASCAL, 3)
            .number("ratio", 2)
            .row("first, small", 1e8 / 3, OptionalDouble.empty())
            .row("second", 4e8, 0.12345)
            .note("Invented.");

    @Test
    void printsUnitsInTheHeadAndNumbersToTheRight() {
        assertThat(table.text()).isEqualTo("""
            Two jets

            name          supply pressure [MPa]  ratio
            ------------------------------------------
            first, small                   33.3
            second                          400   0.12

            Invented.
            """);
    }

    @Test
    void writesCsvInSiWithAllDigits() throws IOException {
        StringBuilder csv = new StringBuilder();
        table.writeCsv(csv);
        assertThat(csv.toString())
                .isEqualTo("name,supply_pressure_Pa,ratio\n\"first, small\"," + 1e8 / 3 + ",\nsecond,4.0E8,0.12345\n");
    }

    @Test
    void refusesARowOfAnotherLength() {
        assertThatThrownBy(() -> table.row("third")).hasMessage("1 cells for 3 columns");
    }
}
