package dev.waterjet.examples;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Options that say how a material is cut: {@code --machinability} and {@code --model}. */
class FeedOptionsTest {

    @TempDir
    private Path folder;

    /** The separation feed grows with the machinability to the power 1.15. */
    @Test
    void anOwnMachinabilityReplacesThatOfTheCatalogue() {
        Ran own = curve("--machinability", "131 +/- 7");
        Ran inPercent = curve("--machinability", "131 \u00b1 5.34351145 %");
        Ran twice = curve("--machinability", "262 +/- 14");
        Ran vague = curve("--machinability", "131 +/- 70");

        assertThat(speed(twice) / speed(own)).isCloseTo(Math.pow(2, 1.15), within(1e-12));
        assertThat(speed(inPercent)).isEqualTo(speed(own));
        assertThat(uncertainty(inPercent) / uncertainty(own)).isCloseTo(1, within(1e-8));
        assertThat(uncertainty(vague)).isGreaterThan(3 * uncertainty(own));
    }

    @Test
    void withoutAnUncertaintyThatOfTheCatalogueStands() {
        Ran catalogued = curve("--material", "titanium");
        Ran own = curve("--material", "titanium", "--machinability", "100");

        assertThat(uncertainty(own) / speed(own)).isCloseTo(uncertainty(catalogued) / speed(catalogued), within(1e-12));
    }

    @Test
    void thePlanSaysByWhichModelAndNumber() {
        Ran plan = Ran.of("plan", "--machinability", "131 +/- 7", "--output-dir", folder.toString());

        assertThat(plan.out()).contains("machinability number 131 \u00b1 7 (assumed)");
    }

    @ParameterizedTest
    @ValueSource(strings = {"0", "-5", "90 %", "90 +/- -3", "abc", "90 +/- x", "1e400", "+/- 3", "90 mm", "NaN"})
    void anythingButANumberAbove0IsRefused(String text) {
        Ran ran = curve("--machinability", text);

        assertThat(ran.status()).isEqualTo(2);
        assertThat(ran.err()).contains("--machinability", "not a number above 0");
    }

    @Test
    void aCalibrationAndAMachinabilityContradictEachOther() {
        Ran ran = curve("--machinability", "90", "--calibration", "own.csv");

        assertThat(ran.err()).contains("--machinability and --calibration both say");
    }

    @ParameterizedTest
    @ValueSource(strings = {"plan", "heads", "predict", "kerf", "sensitivity", "grade"})
    void everyProgramThatComputesAFeedTakesTheModel(String program) {
        Ran ran = Ran.of(program, "--model", "nonsense", "--material", "mild-steel");

        assertThat(ran.err()).contains("unknown model \"nonsense\"");
    }

    /** The program begins with a lead, which only has to separate. */
    @Test
    void aPlanByAnotherModelHasItsFeed() {
        String[] cut = {"--model", "erosion", "--material", "titanium", "--thickness", "12 mm"};
        Ran curve = Ran.of(with(cut, "curve", "--csv", "--index", "1"));
        Ran plan = Ran.of(with(cut, "plan", "--orifice", "0.33 mm", "--json", "--output-dir", folder.toString()));
        Matcher allowed =
                Pattern.compile("\"allowed_feed_m_per_s\" : ([0-9.E+-]+)").matcher(plan.out());

        assertThat(allowed.find()).isTrue();
        assertThat(Double.parseDouble(allowed.group(1)) / speed(curve)).isCloseTo(1, within(1e-6));
    }

    private static Ran curve(String... options) {
        return Ran.of(with(options, "curve", "--csv", "--thickness", "10 mm"));
    }

    private static double speed(Ran ran) {
        return Double.parseDouble(ran.rows().get(0).get("speed_m_per_s"));
    }

    private static double uncertainty(Ran ran) {
        return Double.parseDouble(ran.rows().get(0).get("standard_uncertainty_m_per_s"));
    }

    private static String[] with(String[] rest, String... first) {
        return Stream.concat(Stream.of(first), Stream.of(rest)).toArray(String[]::new);
    }
}
