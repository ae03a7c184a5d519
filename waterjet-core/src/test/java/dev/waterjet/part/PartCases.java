package dev.waterjet.part;

import dev.waterjet.reference.CaseAnswer;
import dev.waterjet.reference.CaseRow;
import dev.waterjet.reference.GeometryRow;
import java.util.Optional;

/** Cases of this package: conditioned paths. */
public final class PartCases {

    private PartCases() {}

    /** Answers rows of the group conditioning. */
    public static Optional<CaseAnswer> answer(CaseRow row) {
        if (!row.get("group").equals("conditioning")) {
            return Optional.empty();
        }
        GeometryRow geometry = GeometryRow.of(row.columns());
        return Optional.of(CaseAnswer.within(
                ConditioningReferenceTest.time(geometry),
                Double.parseDouble(geometry.expected()),
                geometry.tolerance()));
    }
}
