package dev.waterjet.program;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Measures;
import dev.waterjet.part.Contour;
import dev.waterjet.quality.EdgeRequirement;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Programs in every form of the words, split where their feeds change: the same way, and at each place the feed that was given. */
class SplitFormsTest {

    static Stream<DrawnCut> cuts() {
        return DrawnCut.all().stream().filter(cut -> !cut.name().contains("offset"));
    }

    /** The feed of a cut at a distance along it. */
    private static double feedAt(CutFeeds feeds, double distance) {
        int i = 0;
        while (i + 1 < feeds.feeds().size() && feeds.ends().si(i) < distance) {
            i++;
        }
        return feeds.feeds().si(i);
    }

    @ParameterizedTest
    @MethodSource("cuts")
    void eachPartOfABlockHasTheFeedOfItsPlace(DrawnCut expected) {
        Random random = new Random(5);
        ProgramCodes codes = ProgramCodes.defaults().withDecimals(7);
        ProgramWriter writer = ProgramWriter.of(codes).withMinimumPiece(Measures.millimetres(0.01));
        for (DrawnProgram.Image image : DrawnProgram.Image.ALL.subList(3, 6)) {
            for (DrawnProgram.Form form : DrawnProgram.Form.values()) {
                String text = expected.program().text(image, form, true);
                PartProgram program = PartProgram.parse(text, codes);
                List<CutFeeds> feeds = ProgramWriterTest.randomFeeds(program, 6, random);
                String written = writer.rewrite(program, feeds);
                PartProgram again = PartProgram.parse(written, codes);

                assertThat(again.cuts()).hasSameSizeAs(program.cuts());
                double time = ProgramWriterTest.timeS(feeds);
                assertThat(ProgramWriterTest.programmedS(again)).as(written).isCloseTo(time, within(1.1e-3 * time));
                for (int c = 0; c < program.cuts().size(); c++) {
                    assertSame(program.cuts().get(c), again.cuts().get(c), again, feeds.get(c));
                }
            }
        }
    }

    private static void assertSame(ProgramCut cut, ProgramCut split, PartProgram again, CutFeeds feeds) {
        Contour path = cut.path(EdgeRequirement.defaults());
        Contour splitPath = split.path(EdgeRequirement.defaults());
        assertThat(splitPath.lengthSi()).isCloseTo(path.lengthSi(), within(1e-8));
        assertThat(split.isClosed()).isEqualTo(cut.isClosed());
        assertThat(split.size()).isBetween(cut.size(), cut.size() + 5);
        double along = 0;
        for (int i = 0; i < split.size(); i++) {
            double length = Kind.LENGTH.si(splitPath.edge(i).length());
            double given = feedAt(feeds, along + length / 2);
            double feed = Kind.SPEED.si(again.feed(split.firstBlock() + i).orElseThrow());
            // a stretch below the minimum shares the time of its neighbour
            boolean isWhole = feedAt(feeds, along + 2e-5) == feedAt(feeds, along + length - 2e-5);
            if (isWhole && length > 1e-3) {
                assertThat(feed).isCloseTo(given, within(0.025 * given));
            }
            assertThat(Kind.LENGTH.si(path.clearance(splitPath.edge(i).end()))).isLessThan(2e-9);
            assertThat(Kind.LENGTH.si(path.clearance(splitPath.edge(i).pointAt(Kind.LENGTH.of(0.4 * length)))))
                    .isLessThan(5e-9);
            along += length;
        }
    }
}
