package dev.waterjet.feed;

import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.DomainException;
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
                LimitedFeed.of(MachinabilityFeed.published(), Kind.SPEED.of(0.01)),
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
        assertThatThrownBy(() -> sweep.each(5, 1_000_000, (p, o, t, m, h, q, feed) -> {}))
                .isInstanceOf(IndexOutOfBoundsException.class);
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

        assertThatThrownBy(() -> sweep.overThickness(QuantityArray.ofSi(Kind.LENGTH, 0.01, -0.01)))
                .isInstanceOf(DomainException.class)
                .hasMessageContaining("thickness is -0.01 m; it must be above 0");
        assertThatThrownBy(() -> sweep.overOrifice(QuantityArray.ofSi(Kind.LENGTH, 0.001))
                        .feeds())
                .isInstanceOf(DomainException.class)
                .hasMessageContaining("the water would strike the tube");
        assertThatThrownBy(() -> sweep.overIndex(QuantityArray.ofSi(Kind.RATIO, 0.5)))
                .hasMessageContaining("quality index is 0.5");
    }
}
