package dev.waterjet.toolpath;

import dev.waterjet.part.GeometryException;
import dev.waterjet.reference.CaseAnswer;
import dev.waterjet.reference.CaseRow;
import dev.waterjet.reference.GeometryRow;
import java.util.Optional;
import java.util.stream.Collectors;

/** Cases of this package: offset paths. */
@SuppressWarnings("StringSplitter")
public final class ToolPathCases {

    /** Of a neck any place counts; elsewhere the place is that where the jet first does not fit. */
    private static final double ANYWHERE_M = 5e-3;

    private static final double PLACE_M = 1e-4;
    private static final double TOLERANCE_UNLESS_STATED = 1e-9;

    private ToolPathCases() {}

    /** Answers rows of the group offset. */
    public static Optional<CaseAnswer> answer(CaseRow row) {
        if (!row.get("group").equals("offset")) {
            return Optional.empty();
        }
        GeometryRow geometry = GeometryRow.of(row.columns());
        try {
            OffsetResult result = OffsetReferenceTest.offset(geometry);
            return Optional.of(
                    new CaseAnswer(lengths(result), !isRefusal(geometry) && hasExpectedLengths(result, geometry)));
        } catch (GeometryException e) {
            double x = e.xSi() * 1e3;
            double y = e.ySi() * 1e3;
            return Optional.of(new CaseAnswer(
                    "refused at (" + x + "," + y + "): " + e.code(),
                    e.code().equals("jet-does-not-fit") && isRefusal(geometry) && isAt(geometry, e)));
        }
    }

    private static boolean isRefusal(GeometryRow row) {
        return row.expected().startsWith("refused");
    }

    private static String lengths(OffsetResult result) {
        String lengths = result.paths().stream()
                .map(path -> Double.toString(path.contour().lengthSi() * 1e3))
                .collect(Collectors.joining(" + "));
        return result.paths().size() == 1 ? lengths : result.paths().size() + " x " + lengths;
    }

    private static boolean hasExpectedLengths(OffsetResult result, GeometryRow row) {
        String[] words = row.expected().split(" ");
        double expected = Double.parseDouble(words[words.length > 1 ? 2 : 0]) * 1e-3;
        int count = words.length > 1 ? Integer.parseInt(words[0]) : 1;
        double relative = Double.isNaN(row.tolerance()) ? TOLERANCE_UNLESS_STATED : row.tolerance();
        return result.paths().size() == count
                && result.paths().stream()
                        .allMatch(path -> Math.abs(path.contour().lengthSi() - expected) <= relative * expected);
    }

    private static boolean isAt(GeometryRow row, GeometryException e) {
        double[] place = dev.waterjet.reference.VirtualCutRow.points(row.expected());
        double allowed = row.note().contains("any place") ? ANYWHERE_M : PLACE_M;
        return place.length == 0 || Math.hypot(e.xSi() - place[0] * 1e-3, e.ySi() - place[1] * 1e-3) <= allowed;
    }
}
