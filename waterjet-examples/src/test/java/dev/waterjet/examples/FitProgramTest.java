package dev.waterjet.examples;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Program {@code fit} with files as shops write them. */
class FitProgramTest {

    private static final String COLUMNS = "test,thickness_mm,feed_mm_per_min,separated,plate,material,pressure_MPa,"
            + "orifice_mm,tube_mm,abrasive_flow_g_per_min\n";
    private static final String SETTING = ",360,0.3,0.9,400\n";

    @TempDir
    private Path folder;

    private String file(String name, String... rows) throws IOException {
        StringBuilder text = new StringBuilder(COLUMNS);
        for (String row : rows) {
            text.append(row).append(SETTING);
        }
        return Files.writeString(folder.resolve(name), text).toString();
    }

    private String ofShop() throws IOException {
        return file(
                "shop.csv",
                "separation,10,560,,P1,titanium",
                "separation,12,470,,P2,titanium",
                "separation,8,640,,,mild-steel-a36",
                "separation,12,430,,,mild-steel-a36",
                "separation,10,515,,,mild-steel-a36");
    }

    @Test
    void aRefusedPredictionLeavesNoHalfOfAnAnswer() throws IOException {
        for (String[] format : new String[][] {{}, {"--csv"}}) {
            Ran ran = Ran.of(joined(format, "fit", ofShop(), "--predict", "thickness"));
            assertThat(ran.status()).isEqualTo(2);
            assertThat(ran.out()).isEmpty();
            assertThat(ran.err().strip().lines()).hasSize(1);
        }
    }

    /** A fit of two materials is saved, read back by the same program, and used by others, as option and from the shop file. */
    @Test
    void aFitOfSeveralMaterialsIsHandedOn() throws IOException {
        String saved = folder.resolve("both.json").toString();
        String[] predict = {"--csv", "--predict", "thickness=9 mm", "--material", "titanium"};
        Ran first = Ran.of(joined(predict, "fit", ofShop(), "--save", saved));
        Ran again = Ran.of(joined(predict, "fit", "--calibration", saved));

        assertThat(first.err()).isEmpty();
        assertThat(again.out()).isEqualTo(first.out()).contains("\nprediction,");
        String[] curve = {
            "curve",
            "--material",
            "titanium",
            "--thickness",
            "9 mm",
            "--pressure",
            "360 MPa",
            "--orifice",
            "0.3 mm",
            "--tube",
            "0.9 mm",
            "--abrasive-flow",
            "400 g/min",
            "--csv"
        };
        CSVRecord row = Ran.of(joined(new String[] {"--calibration", saved}, curve))
                .rows()
                .get(0);
        assertThat(row.get("model")).isEqualTo("calibration");
        assertThat(first.out()).contains("\nprediction," + row.get("speed_m_per_s") + ",");
        Path shop = Files.writeString(folder.resolve("shop.json"), "{\"calibrations\": [\"both.json\"]}");
        assertThat(Ran.of(joined(new String[] {"--shop", shop.toString()}, curve))
                        .rows()
                        .get(0)
                        .toMap())
                .isEqualTo(row.toMap());
        assertThat(Ran.of("curve", "--material", "granite", "--calibration", saved)
                        .out())
                .contains("no cut of this shop is of Granite");
        assertThat(Ran.of("fit", "--calibration", saved, "--next").err()).hasLineCount(1);
    }

    @Test
    void aFitOfSeveralMaterialsChangedByHandIsRefused() throws IOException {
        Path saved = folder.resolve("both.json");
        Ran.of("fit", ofShop(), "--csv", "--save", saved.toString());
        String text = Files.readString(saved);

        for (String changed : List.of(
                text.replaceFirst("separation,(0|1)", "separation,2"),
                text.replaceFirst("(?s)\"shop\" : \\{.*?\\}", "\"shop\" : {}"),
                text.replaceFirst("\"value\" : ", "\"value\" : 1"),
                text.replaceFirst("(?s)\"parameters\" : \\[.*?\\]", "\"parameters\" : []"))) {
            assertThat(changed).isNotEqualTo(text);
            Ran ran = Ran.of(
                    "fit", "--calibration", Files.writeString(saved, changed).toString());
            assertThat(ran.status()).isEqualTo(2);
            assertThat(ran.err()).hasLineCount(1);
        }
    }

    /** A saved fit prints its own request, whatever the options are. */
    @Test
    void aSavedFitNamesItsOwnModel() throws IOException {
        String cuts = file("one.csv", "separation,10,560,,,", "separation,12,470,,,", "separation,20,250,,,");
        String saved = folder.resolve("own.json").toString();
        Ran.of("fit", cuts, "--model", "specific-energy", "--save", saved);

        assertThat(Ran.of("fit", "--calibration", saved).out()).contains("Fit of the specific-energy model");
    }

    @Test
    void allModelsAreComparedIfNoneIsNamed() throws IOException {
        String cuts = file(
                "six.csv",
                "separation,5,1260,,,",
                "separation,10,560,,,",
                "separation,12,470,,,",
                "separation,20,250,,,",
                "separation,30,165,,,",
                "separation,40,116,,,");
        Ran ran = Ran.of("fit", cuts, "--csv", "--compare");

        assertThat(ran.err()).isEmpty();
        assertThat(ran.out())
                .contains("\nmachinability less specific-energy,", "\nmachinability less erosion,")
                .doesNotContain("declination");
        assertThat(Ran.of("fit", cuts, "--compare").out()).contains("No comparison with declination");
    }

    @Test
    void aRobustFitTakesNeitherPriorNorPlates() throws IOException {
        String cuts = file("one.csv", "separation,10,560,,P1,", "separation,12,470,,P1,", "separation,20,250,,P2,");

        for (String option : List.of("--prior=catalogue", "--prior=scatter", "--group=plate")) {
            assertThat(Ran.of("fit", cuts, "--robust", option).err())
                    .contains("--robust takes no")
                    .hasLineCount(1);
        }
        assertThat(Ran.of("fit", cuts, "--robust", "--prior=none", "--material=titanium")
                        .status())
                .isZero();
    }

    /** Three of eight cuts are wrong by a factor of 3 in feed rate. */
    @Test
    void aBadSeriesIsLeftOut() throws IOException {
        String cuts = file(
                "bad.csv",
                "separation,12,460,,,",
                "separation,12,480,,,",
                "separation,12,1400,,,",
                "separation,12,470,,,",
                "separation,12,1450,,,",
                "separation,12,455,,,",
                "separation,12,1380,,,",
                "separation,12,466,,,");
        Ran ran = Ran.of("fit", cuts, "--high-breakdown", "--predict", "thickness=12 mm");

        assertThat(ran.out())
                .contains(
                        "It withstands 3 wrong cuts to one side of 8.",
                        "Caution: 3 of 8 cuts are so far",
                        "high breakdown");
        String predicted = Ran.of("fit", cuts, "--high-breakdown", "--csv", "--predict", "thickness=12 mm")
                .out()
                .split("\nprediction,", -1)[2];
        assertThat(Double.parseDouble(predicted.split(",", -1)[0]) * 60e3).isBetween(455., 480.);
        assertThat(Ran.of("fit", cuts, "--robust").out()).contains("It withstands 1 wrong cuts");
    }

    /** Before there is a cut the published model says where to begin. */
    @Test
    void aLadderForTheFirstPlate() throws IOException {
        String setting = "thickness=0.5 in, pressure=55 ksi, orifice=0.013 in, tube=0.04 in, abrasive_flow=0.9 lb/min";
        String[] program = {"fit", "--material", "titanium", "--ladder", "--csv", "--predict", setting};
        List<CSVRecord> rows = Ran.of(program).rows();

        assertThat(rows).hasSizeBetween(7, 20);
        assertThat(rows.get(0).get("trial")).isEqualTo("1");
        assertThat(rows.get(0).get("separated_m_per_s")).isEmpty();
        assertThat(Ran.of("fit", "--ladder=0.2", "--material", "titanium", "--predict", setting)
                        .out())
                .contains("step of 20 %", "trials are expected");
        assertThat(Ran.of("fit", "--ladder", "--material", "titanium").err()).hasLineCount(1);
        assertThat(Ran.of("fit", "--ladder", "--material", "titanium", "--predict", "thickness=9 mm")
                        .err())
                .hasLineCount(1);
        String cuts = file("three.csv", "separation,12,460,,,", "separation,12,500,,,", "separation,10,580,,,");
        assertThat(Ran.of("fit", cuts, "--ladder", "--csv").out()).contains("\n\nladder,trial,feed_m_per_s,");
    }

    /** A plate that costs much makes a cut on a known one worth more for its cost. */
    @Test
    void furtherCutsAreRankedByTheirCost() throws IOException {
        String cuts = file(
                "plates.csv",
                "separation,12,460,,P1,",
                "separation,12,480,,P1,",
                "separation,12,500,,P2,",
                "separation,12,530,,P2,",
                "separation,12,430,,P3,",
                "separation,12,440,,P3,");
        String dear =
                Ran.of("fit", cuts, "--next", "--csv", "--plate-cost", "500").out();
        String cheap = Ran.of("fit", cuts, "--next", "--csv").out();

        assertThat(dear).containsPattern("\n\nnext,test,plate.*\nnext,separation,P3,");
        assertThat(cheap).containsPattern("\n\nnext,test,plate.*\nnext,separation,new,");
    }

    @Test
    void quantilesAndProfileAreDrawn() throws IOException {
        String cuts = file("five.csv", "separation,12,460,,,", "separation,12,500,,,", "separation,10,580,,,");
        Path quantiles = folder.resolve("quantiles.svg");
        Path profile = folder.resolve("profile.svg");
        Ran ran = Ran.of("fit", cuts, "--csv", "--quantiles", quantiles.toString(), "--profile", profile.toString());

        assertThat(ran.err()).isEmpty();
        assertThat(Files.readString(quantiles)).contains("<svg", "scatter of the fit", "test cuts");
        assertThat(Files.readString(profile)).contains("<svg", "machinability", "ends of the interval");
    }

    private static String[] joined(String[] rest, String... first) {
        String[] all = java.util.Arrays.copyOf(first, first.length + rest.length);
        System.arraycopy(rest, 0, all, first.length, rest.length);
        return all;
    }
}
