package dev.waterjet.examples.plan;

import dev.waterjet.measure.Kind;
import javax.measure.Quantity;
import javax.measure.quantity.Length;

/** Kerf of a plan as text: the width that the user gave, or that of the kerf model. */
final class KerfText {

    private KerfText() {}

    /** Offset of the plan, to be set at the machine. */
    static String offset(PlanReport report) {
        return report.plan()
                .kerfWidth()
                .map(width -> half(width, report) + " (half of the kerf width given, " + text(width, report) + ")")
                .orElseGet(() ->
                        ReportText.best(report.kerf().offset(), report.units().length()));
    }

    /** Offset of the plan with its uncertainty; a given one beside that of the model. */
    static String offsetAndModel(PlanReport report) {
        String model = ReportText.of(report.kerf().offset(), report.units().length());
        return report.plan().kerfWidth().isPresent() ? offset(report) + "; the kerf model has " + model : model;
    }

    static String minimumInnerRadius(PlanReport report) {
        return report.plan()
                .kerfWidth()
                .map(width -> half(width, report) + ", by the kerf width given")
                .orElseGet(() -> ReportText.best(
                        report.kerf().minimumInnerRadius(), report.units().length()));
    }

    static String minimumSlot(PlanReport report) {
        return report.plan()
                .kerfWidth()
                .map(width -> text(width, report) + ", the kerf width given")
                .orElseGet(() -> ReportText.best(
                        report.kerf().minimumSlotWidth(), report.units().length()));
    }

    /** Caption of the drawing of the kerf, which is that of the model. */
    static String caption(PlanReport report) {
        String caption = KerfDrawing.caption(report.kerf());
        return report.plan()
                .kerfWidth()
                .map(width -> caption + " This is the kerf of the model; the plan has the kerf width given, "
                        + text(width, report) + ".")
                .orElse(caption);
    }

    private static String half(Quantity<Length> width, PlanReport report) {
        return text(Kind.LENGTH.of(Kind.LENGTH.si(width) / 2), report);
    }

    private static String text(Quantity<Length> length, PlanReport report) {
        return ReportText.of(Kind.LENGTH, length, report.units().length());
    }
}
