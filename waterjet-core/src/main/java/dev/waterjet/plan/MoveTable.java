package dev.waterjet.plan;

import dev.waterjet.kerf.HeadTilt;
import dev.waterjet.measure.CsvText;
import dev.waterjet.measure.Kind;
import java.util.List;

/** Moves of a plan with the jet on as CSV. */
final class MoveTable {

    private static final List<String> HEADER = List.of(
            "cut",
            "name",
            "quality",
            "edge",
            "shape",
            "purpose",
            "lead",
            "start_x_m",
            "start_y_m",
            "end_x_m",
            "end_y_m",
            "centre_x_m",
            "centre_y_m",
            "length_m",
            "feed_m_per_s",
            "time_s",
            "cause");

    private static final List<String> TILT_HEADER = List.of(
            "start_tilt_x",
            "start_tilt_y",
            "start_tilt_z",
            "start_tilt_a_rad",
            "start_tilt_b_rad",
            "end_tilt_x",
            "end_tilt_y",
            "end_tilt_z",
            "end_tilt_a_rad",
            "end_tilt_b_rad",
            "end_nozzle_x_m",
            "end_nozzle_y_m",
            "end_nozzle_height_m");

    private final PartPlan plan;
    private final boolean isTilted;

    MoveTable(PartPlan plan) {
        this.plan = plan;
        this.isTilted = plan.moves().stream().anyMatch(move -> move.tilt().isPresent());
    }

    String csv() {
        StringBuilder csv = new StringBuilder(CsvText.row(HEADER));
        if (isTilted) {
            csv.append(',').append(CsvText.row(TILT_HEADER));
        }
        csv.append('\n');
        int last = -1;
        String name = "";
        for (Move move : plan.moves()) {
            if (move.purpose() == Move.Purpose.RAPID || move.purpose() == Move.Purpose.PIERCE) {
                continue;
            }
            PlannedCut cut = plan.cuts().get(move.cut());
            if (move.cut() != last) {
                last = move.cut();
                name = CsvText.row(List.of(cut.name()));
            }
            // row by row without lists: a part may have a million moves, and the name alone needs quotes
            csv.append(move.cut() + 1).append(',').append(name).append(',');
            csv.append(move.quality().orElse(cut.quality()).label())
                    .append(',')
                    .append(move.edge() + 1)
                    .append(',');
            csv.append(move.isArc() ? "arc," : "line,")
                    .append(move.purpose().label())
                    .append(',');
            csv.append(isLead(move) ? "yes," : "no,");
            csv.append(move.start().xSi())
                    .append(',')
                    .append(move.start().ySi())
                    .append(',');
            csv.append(move.end().xSi()).append(',').append(move.end().ySi()).append(',');
            move.centre().ifPresent(centre -> csv.append(centre.xSi()));
            csv.append(',');
            move.centre().ifPresent(centre -> csv.append(centre.ySi()));
            csv.append(',').append(Kind.LENGTH.si(move.length())).append(',');
            csv.append(Kind.SPEED.si(move.feed()))
                    .append(',')
                    .append(Kind.TIME.si(move.time()))
                    .append(',');
            move.limit().ifPresent(limit -> csv.append(limit.label()));
            move.tilt().ifPresent(tilt -> tilt(move, tilt, csv));
            csv.append('\n');
        }
        return csv.toString();
    }

    private static void tilt(Move move, MoveTilt tilt, StringBuilder csv) {
        direction(tilt.start(), csv);
        direction(tilt.end(), csv);
        csv.append(',').append(move.nozzleEnd().xSi());
        csv.append(',').append(move.nozzleEnd().ySi());
        csv.append(',').append(Kind.LENGTH.si(tilt.standOff()) * tilt.end().axisZ());
    }

    private static void direction(HeadTilt tilt, StringBuilder csv) {
        csv.append(',').append(tilt.axisX());
        csv.append(',').append(tilt.axisY());
        csv.append(',').append(tilt.axisZ());
        csv.append(',').append(Kind.ANGLE.si(tilt.gimbalA()));
        csv.append(',').append(Kind.ANGLE.si(tilt.gimbalB()));
    }

    private static boolean isLead(Move move) {
        return move.purpose() == Move.Purpose.LEAD_IN || move.purpose() == Move.Purpose.LEAD_OUT;
    }
}
