package dev.waterjet.plan;

import static dev.waterjet.measure.Measures.degrees;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.plan.PartPlannerTest.MEDIUM;
import static dev.waterjet.plan.PartPlannerTest.SETUP;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.motion.TiltingHead;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Part;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import dev.waterjet.pierce.Pierce;
import dev.waterjet.pierce.PierceMethod;
import dev.waterjet.pierce.PierceSettings;
import dev.waterjet.program.CutFeeds;
import dev.waterjet.program.PartProgram;
import dev.waterjet.program.ProgramCut;
import dev.waterjet.program.ProgramMove;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Moves that pierce, feeds that give a pierce its time, and times of the pieces of a move, by hand. */
class PierceMovesTest {

    private static final Part PART =
            Part.of(Contour.rectangle(Point.millimetres(0, 0), Point.millimetres(120, 90), MEDIUM));

    private static Pierce pierce(boolean isMoving) {
        double room = isMoving ? 30 : 0.8;
        Setup setup = SETUP.withPierceSettings(PierceSettings.defaults().withPierceClearance(millimetres(room)));
        Pierce pierce = PartPlanner.of(setup)
                .plan(PART, Jobs.plate("stainless-304", 30))
                .cuts()
                .get(0)
                .pierce();
        assertThat(pierce.method()).isEqualTo(isMoving ? PierceMethod.CIRCULAR : PierceMethod.STATIONARY);
        return pierce;
    }

    /** Three circles as wide as the bore, ahead of the pierce point, take the upper end of the time together. */
    @Test
    void aMovingPierceIsThreeCirclesAheadOfItsPoint() {
        Pierce pierce = pierce(true);
        double seconds = Kind.TIME.si(pierce.time().upper(0.95));
        Point place = Point.millimetres(10, 20);
        double bore = 0.76e-3;
        for (double turn = 0; turn < 6; turn += 0.9) {
            for (double away : new double[] {3e-4, 2e-3}) {
                Point towards = Point.ofSi(0.01 + away * Math.cos(turn), 0.02 + away * Math.sin(turn));
                List<ProgramMove> moves = PierceMoves.of(pierce, place, towards, bore);

                assertThat(moves).hasSize(4);
                assertThat(Kind.TIME.si(((ProgramMove.JetOn) moves.get(0)).dwell()))
                        .isZero();
                double time = 0;
                for (ProgramMove move : moves.subList(1, 4)) {
                    ProgramMove.Arc arc = (ProgramMove.Arc) move;
                    assertThat(arc.end()).isEqualTo(place);
                    assertThat(arc.centre().xSi()).isCloseTo(0.01 + bore / 2 * Math.cos(turn), within(1e-12));
                    assertThat(arc.centre().ySi()).isCloseTo(0.02 + bore / 2 * Math.sin(turn), within(1e-12));
                    assertThat(arc.turn()).isEqualTo(Side.LEFT);
                    time += Math.PI * bore / Kind.SPEED.si(arc.feed());
                }
                assertThat(time).isCloseTo(seconds, within(1e-9 * seconds));
            }
        }
    }

    @Test
    void aPierceThatStaysIsADwell() {
        Point place = Point.millimetres(10, 20);
        Pierce still = pierce(false);
        Pierce moving = pierce(true);

        assertThat(PierceMoves.of(still, place, Point.millimetres(12, 20), 0.76e-3))
                .containsExactly(new ProgramMove.JetOn(still.time().upper(0.95)));
        // there is nowhere to go
        assertThat(PierceMoves.of(moving, place, place, 0.76e-3))
                .containsExactly(new ProgramMove.JetOn(moving.time().upper(0.95)));
    }

    @Test
    void thePierceHasItsTimeAndTheOtherFeedsStay() {
        Pierce pierce = pierce(true);
        double from = 0;
        double to = 2 * Math.PI * 1e-3;
        ProgramCut cut = PartProgram.parse("G0 X80 Y60~M3~G3 I-1~G1 X100~G3 I-20~M5~".replace('~', '\n'))
                .cuts()
                .get(0);
        double total = to + 0.02 + 2 * Math.PI * 0.02;
        for (int seed = 0; seed < 30; seed++) {
            Random random = new Random(seed);
            int n = 1 + random.nextInt(6);
            double[] ends = random.doubles(n, 1e-4, total).sorted().toArray();
            ends[n - 1] = total;
            double[] feeds = random.doubles(n, 1e-3, 1e-2).toArray();
            double[] paths = new double[n];
            for (int i = 0; i < n; i++) {
                paths[i] = (ends[i] - (i == 0 ? 0 : ends[i - 1])) * (0.7 + 0.6 * random.nextDouble());
            }
            CutFeeds given = new CutFeeds(
                    QuantityArray.ofSi(Kind.LENGTH, ends),
                    QuantityArray.ofSi(Kind.SPEED, feeds),
                    QuantityArray.ofSi(Kind.LENGTH, paths));
            MovingPierce moving = MovingPierce.of(cut);
            assertThat(moving.isThere()).isTrue();
            CutFeeds slowed = moving.slowed(given, pierce);
            double seconds = Kind.TIME.si(pierce.time().upper(0.95));

            assertThat(time(slowed, from, to)).isCloseTo(seconds, within(1e-6 * seconds));
            assertThat(sum(slowed.paths())).isCloseTo(sum(given.paths()), within(3e-5));
            assertThat(slowed.ends().si(slowed.ends().size() - 1)).isCloseTo(total, within(1e-12));
            assertThat(time(slowed, to, total)).isCloseTo(time(given, to, total), within(5e-3));
        }
    }

    private static double sum(QuantityArray<?> values) {
        double sum = 0;
        for (double value : values.toSi()) {
            sum += value;
        }
        return sum;
    }

    /** Time between two distances along a cut. */
    private static double time(CutFeeds feeds, double from, double to) {
        double time = 0;
        double before = 0;
        for (int i = 0; i < feeds.feeds().size(); i++) {
            double end = feeds.ends().si(i);
            double within = Math.max(0, Math.min(end, to) - Math.max(before, from));
            time += within
                    * feeds.paths().si(i)
                    / (end - before)
                    / feeds.feeds().si(i);
            before = end;
        }
        return time;
    }

    /** A dwell before the circles counts; one that is long enough leaves the feeds as they are, and so does no circle. */
    @Test
    void aDwellBeforeTheCirclesCounts() {
        Pierce pierce = pierce(true);
        double seconds = Kind.TIME.si(pierce.time().upper(0.95));
        double to = 2 * Math.PI * 1e-3;
        for (double waited : new double[] {0, 0.4, 0.9, 1.5}) {
            String dwell = waited == 0 ? "" : "G4 P%d~".formatted(Math.round(waited * seconds * 1000));
            ProgramCut cut = PartProgram.parse(
                            ("G0 X80 Y60~M3~" + dwell + "G3 I-1~G1 X100~G3 I-20~M5~").replace('~', '\n'))
                    .cuts()
                    .get(0);
            double total = to + 0.02 + 2 * Math.PI * 0.02;
            CutFeeds given = CutFeeds.ofSi(new double[] {total}, new double[] {5e-3});
            CutFeeds slowed = MovingPierce.of(cut).slowed(given, pierce);
            double expected = Math.max(to / 5e-3, seconds * (1 - waited));

            assertThat(time(slowed, 0, to)).isCloseTo(expected, within(1e-3 * seconds));
            if (waited > 1) {
                assertThat(slowed).isEqualTo(given);
            }
        }
        ProgramCut plain = PartProgram.parse("G0 X80 Y60~M3~G1 X100~G3 I-20~M5~".replace('~', '\n'))
                .cuts()
                .get(0);
        assertThat(MovingPierce.of(plain).isThere()).isFalse();
        CutFeeds given = CutFeeds.ofSi(new double[] {0.1}, new double[] {5e-3});
        assertThat(MovingPierce.of(plain).slowed(given, pierce)).isSameAs(given);
    }

    /** Whatever the head does, a move takes its length over its feed, and its pieces follow in the tilt of the one before. */
    @Test
    void piecesOfAMoveTakeTheirShareOfItsTime() {
        Setup tilting = SETUP.withTiltingHead(TiltingHead.of(
                degrees(10),
                Kind.ANGULAR_SPEED.of(Math.toRadians(60)),
                Kind.ANGULAR_ACCELERATION.of(Math.toRadians(500))));
        Part part = Part.of(
                Contour.from(Point.millimetres(0, 0))
                        .requirement(MEDIUM)
                        .lineTo(Point.millimetres(60, 0))
                        .lineTo(Point.millimetres(60, 50))
                        .arcTo(Point.millimetres(50, 60), Point.millimetres(50, 50), Side.LEFT)
                        .lineTo(Point.millimetres(0, 60))
                        .close(),
                Contour.circle(Point.millimetres(25, 30), millimetres(9), MEDIUM));
        for (Setup setup : List.of(SETUP, tilting)) {
            PartPlan plan = PartPlanner.of(setup).plan(part, PartPlannerTest.PLATE);
            double cutting = 0;
            for (Move move : plan.moves()) {
                if (move.purpose() != Move.Purpose.RAPID && move.purpose() != Move.Purpose.PIERCE) {
                    double time = Kind.TIME.si(move.time());
                    assertThat(Kind.SPEED.si(move.feed()) * time)
                            .isCloseTo(Kind.LENGTH.si(move.length()), within(1e-9));
                    cutting += time;
                }
                assertDescribed(move);
            }
            assertThat(cutting).isCloseTo(Kind.TIME.si(plan.cuttingTime().value()), within(1e-6));
        }
    }

    private static void assertDescribed(Move move) {
        Map<String, Object> described = move.describe();
        assertThat(described)
                .containsEntry("start_x_m", move.start().xSi())
                .containsEntry("start_y_m", move.start().ySi())
                .containsEntry("end_x_m", move.end().xSi())
                .containsEntry("end_y_m", move.end().ySi())
                .containsEntry("length_m", Kind.LENGTH.si(move.length()))
                .containsEntry("feed_m_per_s", Kind.SPEED.si(move.feed()))
                .containsEntry("time_s", Kind.TIME.si(move.time()));
        assertThat(described.containsKey("quality")).isEqualTo(move.quality().isPresent());
        assertThat(described.containsKey("turn")).isEqualTo(move.isArc());
        assertThat(described.containsKey("limit")).isEqualTo(move.limit().isPresent());
        assertThat(described.containsKey("tilt")).isEqualTo(move.tilt().isPresent());
        move.centre()
                .ifPresent(centre -> assertThat(described)
                        .containsEntry("centre_x_m", centre.xSi())
                        .containsEntry("centre_y_m", centre.ySi()));
        if (move.tilt().isPresent()) {
            assertThat(described)
                    .containsEntry("nozzle_start_x_m", move.nozzleStart().xSi())
                    .containsEntry("nozzle_start_y_m", move.nozzleStart().ySi())
                    .containsEntry("nozzle_end_x_m", move.nozzleEnd().xSi())
                    .containsEntry("nozzle_end_y_m", move.nozzleEnd().ySi());
        } else {
            assertThat(move.nozzleStart()).isEqualTo(move.start());
            assertThat(move.nozzleEnd()).isEqualTo(move.end());
        }
    }
}
