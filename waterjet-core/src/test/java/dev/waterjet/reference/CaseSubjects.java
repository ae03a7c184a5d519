package dev.waterjet.reference;

import dev.waterjet.calibrate.CalibrateCases;
import dev.waterjet.kerf.KerfCases;
import dev.waterjet.motion.MotionCases;
import dev.waterjet.part.PartCases;
import dev.waterjet.simulate.SimulateCases;
import dev.waterjet.toolpath.ToolPathCases;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Computations for each kind of cases. A package adds what it computes in one line here, and reaches its package-private
 * code through a class of its own tests. Rows of the suite go to {@link ReferenceSuite}.
 */
public final class CaseSubjects {

    private static final Map<CaseKind, List<CaseSubject>> BY_KIND = Map.of(
            CaseKind.SUITE, List.of(CaseSubjects::suite),
            CaseKind.PATH, List.of(PartCases::answer, ToolPathCases::answer, MotionCases::path),
            CaseKind.VIRTUAL_CUT, List.of(KerfCases::answer, MotionCases::slowdown, SimulateCases::answer),
            CaseKind.STATISTICS, List.of(CalibrateCases::answer));

    private CaseSubjects() {}

    /** The answer to a row; empty if no package computes it. */
    public static Optional<CaseAnswer> answer(CaseRow row) {
        for (CaseSubject subject : BY_KIND.getOrDefault(row.kind(), List.of())) {
            Optional<CaseAnswer> answer = subject.answer(row);
            if (answer.isPresent()) {
                return answer;
            }
        }
        return Optional.empty();
    }

    private static Optional<CaseAnswer> suite(CaseRow row) {
        Subjects.Subject subject = ReferenceSuite.subjects().get(row.get("subject"));
        if (subject == null) {
            return Optional.empty();
        }
        ReferenceCase reference = ReferenceCase.of("", row.columns());
        Computed computed = subject.compute(Inputs.parse(reference.inputs()));
        double difference = Math.abs(computed.si() - reference.expectedSi(computed.kind()));
        return Optional.of(new CaseAnswer(
                reference.text(computed.kind(), computed.si(), 12),
                difference <= reference.toleranceSi(computed.kind())));
    }
}
