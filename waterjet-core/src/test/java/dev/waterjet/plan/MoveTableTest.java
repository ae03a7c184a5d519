package dev.waterjet.plan;

import static org.assertj.core.api.Assertions.assertThat;

import dev.waterjet.measure.Kind;
import dev.waterjet.motion.FeedLimit;
import dev.waterjet.part.Point;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** The table of the moves of a plan says of each move with the jet on what the move says of itself. */
class MoveTableTest {

    private static final PartPlan PLAN =
            PartPlanner.of(PartPlannerTest.SETUP).plan(PartPlannerTest.bracket(), PartPlannerTest.PLATE);

    private static List<Move> cutting() {
        return PLAN.moves().stream()
                .filter(move -> move.purpose() != Move.Purpose.RAPID && move.purpose() != Move.Purpose.PIERCE)
                .toList();
    }

    private static List<Map<String, String>> rows() {
        List<String> lines = PLAN.csv().lines().toList();
        String[] header = lines.get(0).split(",", -1);
        return lines.stream().skip(1).map(line -> row(header, line)).toList();
    }

    private static Map<String, String> row(String[] header, String line) {
        String[] cells = line.split(",", -1);
        assertThat(cells).hasSameSizeAs(header);
        Map<String, String> row = new HashMap<>();
        for (int i = 0; i < header.length; i++) {
            row.put(header[i], cells[i]);
        }
        return row;
    }

    private static String text(Optional<Point> point, java.util.function.ToDoubleFunction<Point> coordinate) {
        return point.map(at -> String.valueOf(coordinate.applyAsDouble(at))).orElse("");
    }

    @Test
    void rowsAreTheMovesWithTheJetOn() {
        List<Move> moves = cutting();
        List<Map<String, String>> rows = rows();

        assertThat(rows).hasSameSizeAs(moves);
        for (int i = 0; i < moves.size(); i++) {
            Move move = moves.get(i);
            assertThat(rows.get(i))
                    .containsEntry("start_x_m", String.valueOf(move.start().xSi()))
                    .containsEntry("start_y_m", String.valueOf(move.start().ySi()))
                    .containsEntry("end_x_m", String.valueOf(move.end().xSi()))
                    .containsEntry("end_y_m", String.valueOf(move.end().ySi()))
                    .containsEntry("centre_x_m", text(move.centre(), Point::xSi))
                    .containsEntry("centre_y_m", text(move.centre(), Point::ySi))
                    .containsEntry("length_m", String.valueOf(Kind.LENGTH.si(move.length())))
                    .containsEntry("feed_m_per_s", String.valueOf(Kind.SPEED.si(move.feed())))
                    .containsEntry("time_s", String.valueOf(Kind.TIME.si(move.time())))
                    .containsEntry("cause", move.limit().map(FeedLimit::label).orElseThrow());
        }
    }

    /** The bore is cut first, fine, then the rim of four edges; people count from 1. */
    @Test
    void rowsNameCutEdgeShapeAndPurpose() {
        List<Map<String, String>> rows = rows();

        assertThat(rows).extracting(row -> row.get("cut") + row.get("name")).containsOnly("1bore", "2rim");
        assertThat(rows)
                .filteredOn(row -> "bore".equals(row.get("name")))
                .allSatisfy(row -> assertThat(row).containsEntry("quality", "fine"));
        assertThat(rows)
                .filteredOn(row -> "rim".equals(row.get("name")))
                .allSatisfy(row -> assertThat(row).containsEntry("quality", "medium"));
        assertThat(rows)
                .filteredOn(row -> "rim".equals(row.get("name")) && "cut".equals(row.get("purpose")))
                .extracting(row -> row.get("edge"))
                .contains("1", "2", "3", "4")
                .doesNotContain("0", "5");
        assertThat(rows)
                .allSatisfy(row -> assertThat(row)
                        .containsEntry("shape", "".equals(row.get("centre_x_m")) ? "line" : "arc")
                        .containsEntry(
                                "lead", String.valueOf(row.get("purpose")).startsWith("lead") ? "yes" : "no"));
        assertThat(rows).extracting(row -> row.get("purpose")).contains("lead-in", "cut");
        assertThat(rows).extracting(row -> row.get("shape")).contains("line", "arc");
    }

    @Test
    void anArcSaysToWhichSideItTurns() {
        for (Move move : cutting()) {
            assertThat(move.describe().get("turn"))
                    .isEqualTo(move.turn()
                            .map(side -> side.name().toLowerCase(Locale.ROOT))
                            .orElse(null));
            assertThat(move.describe().containsKey("centre_x_m")).isEqualTo(move.isArc());
        }
        assertThat(cutting()).anyMatch(Move::isArc);
    }
}
