package dev.waterjet.plan;

import dev.waterjet.measure.Message;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Finding;
import dev.waterjet.part.GeometryException;
import dev.waterjet.part.Part;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import dev.waterjet.program.ProgramCut;
import dev.waterjet.quality.EdgeRequirement;
import dev.waterjet.toolpath.KerfOffset;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import javax.measure.Quantity;
import javax.measure.quantity.Length;

/** Checks whether the jet fits into the loops of a program that leaves the kerf offset to the machine. */
final class ProgramFeatures {

    private static final Set<String> MEETS_ITSELF = Set.of("crosses-itself", "touches-itself", "retraces-itself");

    private final List<Finding> findings;

    ProgramFeatures(List<Finding> findings) {
        this.findings = findings;
    }

    void check(ProgramCut cut, Side part, Quantity<Length> minimumInnerRadius) {
        Optional<Contour> loop = cut.loop(EdgeRequirement.defaults());
        if (cut.jetSide().isEmpty() || loop.isEmpty()) {
            return;
        }
        try {
            Part.of(loop.get());
            KerfOffset.of(minimumInnerRadius)
                    .withNarrowPlaces(KerfOffset.NarrowPlaces.SPLIT)
                    .apply(loop.get(), part.opposite())
                    .findings()
                    .stream()
                    .filter(finding -> !finding.isSatisfied())
                    .map(finding -> atLine(finding, cut.line()))
                    .forEach(findings::add);
        } catch (GeometryException impossible) {
            Message fault = MEETS_ITSELF.contains(impossible.code())
                    ? Message.of(
                            "fit-not-checked",
                            "the contour meets itself here, as a relief or a crossing does; whether the jet fits beside"
                                    + " it was not checked")
                    : impossible.message();
            findings.add(atLine(Finding.violated(fault, Point.ofSi(impossible.xSi(), impossible.ySi())), cut.line()));
        }
    }

    private static Finding atLine(Finding finding, int line) {
        return new Finding(
                finding.isSatisfied(), finding.message().with("line", line), finding.remedies(), finding.place());
    }
}
