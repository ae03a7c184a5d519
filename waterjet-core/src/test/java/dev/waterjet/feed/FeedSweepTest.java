package dev.waterjet.feed;

import static dev.waterjet.Refusals.assertRefused;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import javax.measure.quantity.Length;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class FeedSweepTest {

    private static final AbrasiveJet JET = FeedModelContract.jet(345, 0.30, 0.9, 400);
    private static final Workpiece PLATE = Workpiece.of(Materials.standard().get("mild-steel"), millimetres(12));

    private static FeedSweep sweep(FeedModel model) {
        return FeedSweep.of(model, JET, PLATE, 3)
                .overPressure(QuantityArray.parse(Kind.PRESSURE, "250 MPa..400 MPa step 50 MPa"))
                .overOrifice(QuantityArray.parse(Kind.LENGTH, "0.25 mm..0.35 mm step 0.05 mm"))
                .overTube(QuantityArray.parse(Kind.LENGTH, "0.76 mm..1.02 mm step 0.26 mm"))
                .overAbrasiveFlow(QuantityArray.parse(Kind.MASS_FLOW, "200 g/min..500 g/min step 100 g/min"))
                .overThickness(QuantityArray.parse(Kind.LENGTH, "0.1 mm..40.1 mm step 10 mm"))
                .overIndex(QuantityArray.ofSi(Kind.RATIO, 1, 2.5));
    }

    static List<FeedModel> models() {
        return List.of(
                MachinabilityFeed.published(),
                MachinabilityFeed.publishedByWaterFlow(),
                SpecificEnergyFeed.ofSteel(),
                DeclinationFeed.linear(MachinabilityFeed.published()),
                MachinabilityFeed.published().capped(Kind.SPEED.of(0.01)),
                ErosionFeed.standard());
    }

    @ParameterizedTest
    @MethodSource("models")
    void everyPointIsTheFeedOfItsJet(FeedModel model) {
        FeedSweep sweep = sweep(model);
        List<Double> expected = new ArrayList<>();
        List<Double> found = new ArrayList<>();
        sweep.each((p, o, t, m, h, q, feed) -> {
            found.add(feed);
            expected.add(model.feed(Jets.at(JET, p, o, t, m), PLATE.withThickness(Kind.LENGTH.of(h)), q)
                    .si());
        });

        assertThat(sweep.size()).isEqualTo(4 * 3 * 2 * 4 * 5 * 2);
        assertThat(found).hasSize((int) sweep.size()).isEqualTo(expected);
        assertThat(sweep.feeds().toSi())
                .containsExactly(found.stream().mapToDouble(x -> x).toArray());
    }

    @Test
    void partsGiveTheBitsOfTheWhole() {
        FeedSweep sweep = sweep(MachinabilityFeed.published());
        List<Double> whole = new ArrayList<>();
        sweep.each((p, o, t, m, h, q, feed) -> whole.add(p + o + t + m + h + q + feed));
        List<Double> parts = new ArrayList<>();
        for (long from = 0; from < sweep.size(); from += 77) {
            sweep.each(
                    from,
                    Math.min(sweep.size(), from + 77),
                    (p, o, t, m, h, q, feed) -> parts.add(p + o + t + m + h + q + feed));
        }

        assertThat(parts).isEqualTo(whole);
        for (long[] part : new long[][] {{5, 1_000_000}, {-1, 5}, {7, 6}}) {
            assertRefused(() -> sweep.each(part[0], part[1], (p, o, t, m, h, q, feed) -> {}), "no-such-points");
        }
    }

    @ParameterizedTest
    @MethodSource("models")
    void aSerialisedSweepComputesTheSameBits(FeedModel model) throws Exception {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ObjectOutputStream out = new ObjectOutputStream(bytes)) {
            out.writeObject(sweep(model));
        }
        try (ObjectInputStream in = new ObjectInputStream(new ByteArrayInputStream(bytes.toByteArray()))) {
            FeedSweep copy = (FeedSweep) in.readObject();
            assertThat(copy.feeds()).isEqualTo(sweep(model).feeds());
        }
    }

    @Test
    void csvHasAHeaderWithUnitsAndEveryRow() {
        StringBuilder csv = new StringBuilder();
        sweep(MachinabilityFeed.published()).writeCsv(csv);
        List<String> lines = csv.toString().lines().toList();

        assertThat(lines).hasSize(1 + 960);
        assertThat(lines.get(0))
                .isEqualTo("gauge_pressure_Pa,orifice_m,tube_m,abrasive_flow_kg_per_s,thickness_m,index,feed_m_per_s");
        String[] cells = lines.get(960).split(",", -1);
        assertThat(Double.parseDouble(cells[0])).isEqualTo(400e6);
        assertThat(Double.parseDouble(cells[6]))
                .isEqualTo(sweep(MachinabilityFeed.published()).feeds().si(959));
    }

    @Test
    void aFailingWriterIsToldOf() {
        Appendable broken = new Appendable() {
            @Override
            public Appendable append(CharSequence text) throws IOException {
                throw new IOException("the disc is full");
            }

            @Override
            public Appendable append(CharSequence text, int start, int end) throws IOException {
                throw new IOException("the disc is full");
            }

            @Override
            public Appendable append(char c) throws IOException {
                throw new IOException("the disc is full");
            }
        };

        assertThatThrownBy(() -> sweep(MachinabilityFeed.published()).writeCsv(broken))
                .isInstanceOf(UncheckedIOException.class)
                .hasMessageContaining("the disc is full");
    }

    @Test
    void impossibleInputsAreRefused() {
        FeedSweep sweep = FeedSweep.of(MachinabilityFeed.published(), JET, PLATE, 3);

        assertRefused(
                () -> sweep.overThickness(QuantityArray.ofSi(Kind.LENGTH, 0.01, -0.01)),
                "must-be-above",
                "thickness",
                0);
        assertRefused(
                () -> sweep.overOrifice(QuantityArray.ofSi(Kind.LENGTH, 0.001)).feeds(),
                "must-be-above",
                "focusing tube bore",
                0.001);
        assertRefused(
                () -> sweep.overIndex(QuantityArray.ofSi(Kind.RATIO, 0.5)), "must-be-at-least", "quality index", 1);
    }

    @Test
    void aSweepOfMorePointsThanALongCountsIsRefused() {
        QuantityArray<Length> many =
                QuantityArray.ofSi(Kind.LENGTH, new double[65_536]).map(Kind.LENGTH, x -> 0.01);
        FeedSweep square = FeedSweep.of(MachinabilityFeed.published(), JET, PLATE, 3)
                .overTube(many)
                .overThickness(many);

        assertThat(square.size()).isEqualTo(1L << 32);
        assertRefused(square::feeds, "must-be-at-most", "number of points", 1e9);
        FeedSweep cube = square.overIndex(many.map(Kind.RATIO, x -> 1));
        assertThat(cube.size()).isEqualTo(1L << 48);
        assertRefused(
                () -> cube.overAbrasiveFlow(many.map(Kind.MASS_FLOW, x -> x)).size(), "sweep-too-large");
    }

    /** The last digit counts fastest: 2 pressures by 3 indices are read as a table of two rows. */
    @Test
    void theLastInputRunsFastest() {
        AbrasiveJet jet = FeedModelContract.jet(345, 0.30, 0.9, 400);
        Workpiece plate = Workpiece.of(Materials.standard().get("mild-steel"), millimetres(12));
        FeedSweep sweep = FeedSweep.of(MachinabilityFeed.published(), jet, plate, 1)
                .overPressure(QuantityArray.ofSi(Kind.PRESSURE, 2e8, 3e8))
                .overIndex(QuantityArray.ofSi(Kind.RATIO, 1, 2, 3));
        StringBuilder seen = new StringBuilder();
        sweep.each((p, o, t, m, h, q, feed) ->
                seen.append((int) (p / 1e8)).append((int) q).append(' '));
        StringBuilder tail = new StringBuilder();
        sweep.each(
                4,
                6,
                (p, o, t, m, h, q, feed) ->
                        tail.append((int) (p / 1e8)).append((int) q).append(' '));

        assertThat(seen).hasToString("21 22 23 31 32 33 ");
        assertThat(tail).hasToString("32 33 ");
        assertThat(sweep)
                .hasToString("sweep of 6 feed rates of " + plate.material().name() + " by machinability");
        sweep.each(6, 6, (p, o, t, m, h, q, feed) -> {
            throw new AssertionError("no point is passed on");
        });
    }
}
