package dev.waterjet.plan;

import dev.waterjet.kerf.Kerf;
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

/** Checks whether the jet fits into the loops of a program that leaves the kerf offset to the machine. */
final class ProgramFeatures {

    private final List<Finding> findings;

    ProgramFeatures(List<Finding> findings) {
        this.findings = findings;
    }

    void check(ProgramCut cut, Side part, Kerf kerf) {
        Optional<Contour> loop = cut.loop(EdgeRequirement.defaults());
        if (cut.jetSide().isEmpty() || loop.isEmpty()) {
            return;
        }
        try {
            Part.of(loop.get());
            KerfOffset.of(kerf.minimumInnerRadius().value())
                    .withNarrowPlaces(KerfOffset.NarrowPlaces.SPLIT)
                    .apply(loop.get(), part.opposite())
                    .findings()
                    .stream()
                    .filter(finding -> !finding.isSatisfied())
                    .map(finding -> atLine(finding, cut.line()))
                    .forEach(findings::add);
        } catch (GeometryException impossible) {
            findings.add(atLine(
                    Finding.violated(impossible.message(), Point.ofSi(impossible.xSi(), impossible.ySi())),
                    cut.line()));
        }
    }

    private static Finding atLine(Finding finding, int line) {
        return new Finding(
                finding.isSatisfied(), finding.message().with("line", line), finding.remedies(), finding.place());
    }
}
