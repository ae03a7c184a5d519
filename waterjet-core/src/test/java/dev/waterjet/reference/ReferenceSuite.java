package dev.waterjet.reference;

import dev.waterjet.circuit.CircuitSubjects;
import dev.waterjet.cost.CostSubjects;
import dev.waterjet.feed.FeedSubjects;
import dev.waterjet.fit.FitSubjects;
import dev.waterjet.hydraulics.HydraulicsSubjects;
import dev.waterjet.jet.JetSubjects;
import dev.waterjet.kerf.KerfSubjects;
import dev.waterjet.motion.PathSubjects;
import dev.waterjet.part.PartSubjects;
import dev.waterjet.placement.PlacementSubjects;
import dev.waterjet.plan.JobSubjects;
import dev.waterjet.program.ProgramSubjects;
import dev.waterjet.surface.SurfaceSubjects;
import dev.waterjet.uncertainty.UncertaintySubjects;
import dev.waterjet.vessel.VesselSubjects;
import dev.waterjet.water.WaterSubjects;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;

/** The files of the suite and the computations that they can ask for. */
public final class ReferenceSuite {

    private static final List<String> FILES = List.of(
            "water",
            "vessel",
            "hydraulics",
            "circuit",
            "jet",
            "feed",
            "kerf",
            "grade",
            "part",
            "path",
            "program",
            "placement",
            "job",
            "cost",
            "fit",
            "uncertainty");

    private static final List<Subjects> SUBJECTS = List.of(
            new WaterSubjects(),
            new VesselSubjects(),
            new HydraulicsSubjects(),
            new CircuitSubjects(),
            new JetSubjects(),
            new FeedSubjects(),
            new KerfSubjects(),
            new SurfaceSubjects(),
            new PathSubjects(),
            new ProgramSubjects(),
            new JobSubjects(),
            new PartSubjects(),
            new PlacementSubjects(),
            new CostSubjects(),
            new FitSubjects(),
            new UncertaintySubjects());

    private ReferenceSuite() {}

    /** Every row of every file. */
    public static List<ReferenceCase> cases() {
        List<ReferenceCase> cases = new ArrayList<>();
        for (String file : FILES) {
            read(file, cases);
        }
        return cases;
    }

    private static void read(String file, List<ReferenceCase> into) {
        CSVFormat format = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get();
        try (InputStream stream = ReferenceSuite.class.getResourceAsStream("/reference/" + file + ".csv")) {
            if (stream == null) {
                throw new IllegalStateException("no reference file " + file);
            }
            for (CSVRecord row : format.parse(new InputStreamReader(stream, StandardCharsets.UTF_8))) {
                into.add(ReferenceCase.of(file, row.toMap()));
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Every computation by name. */
    public static Map<String, Subjects.Subject> subjects() {
        Map<String, Subjects.Subject> all = new HashMap<>();
        for (Subjects offered : SUBJECTS) {
            offered.subjects().forEach((name, subject) -> {
                if (all.put(name, subject) != null) {
                    throw new IllegalStateException("two subjects are called " + name);
                }
            });
        }
        return all;
    }

    /** Result of the library for a row. */
    public static Computed compute(ReferenceCase row) {
        Subjects.Subject subject = subjects().get(row.subject());
        if (subject == null) {
            throw new IllegalStateException(row.id() + " asks for " + row.subject() + ", which no package offers");
        }
        return subject.compute(Inputs.parse(row.inputs()));
    }
}
