package dev.waterjet.calibrate;

import dev.waterjet.reference.CaseAnswer;
import dev.waterjet.reference.CaseRow;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalDouble;

/** Rows of the statistics of test cuts, whose data sets lie beside the file. */
public final class CalibrateCases {

    private CalibrateCases() {}

    /** The value of a row; empty if the library does not compute its quantity. */
    public static Optional<CaseAnswer> answer(CaseRow row) {
        String folder = row.columns().get(CaseRow.FOLDER);
        if (folder == null) {
            return Optional.empty();
        }
        OptionalDouble computed = CutStatisticsSubject.compute(new CutStatisticsRow(
                row.get("dataset"),
                row.get("quantity"),
                row.columns().getOrDefault("call", ""),
                name -> read(Path.of(folder, name))));
        if (computed.isEmpty()) {
            return Optional.empty();
        }
        // values are given with twelve digits
        double tolerance = Math.max(2e-12, Double.parseDouble(row.get("relative_tolerance")));
        return Optional.of(CaseAnswer.within(computed.getAsDouble(), Double.parseDouble(row.get("value")), tolerance));
    }

    private static String read(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
