package dev.waterjet.examples.plan;

import static dev.waterjet.examples.chart.SvgText.escaped;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Evidence;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Units;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;

/** Sheet of a plan: one self-contained page of HTML. */
public final class Sheet {

    private static final int MAX_CUTS = 60;

    private final PartPlan plan;
    private final JobFacts job;
    private final StringBuilder html = new StringBuilder();

    private Sheet(PartPlan plan, JobFacts job) {
        this.plan = plan;
        this.job = job;
    }

    /**
     * Returns the page.
     *
     * @param plan the plan
     * @param job piercing, wear and cost
     * @return the HTML
     */
    public static String html(PartPlan plan, JobFacts job) {
        return new Sheet(plan, job).page();
    }

    private String page() {
        PlanRequest request = plan.request();
        html.append("""
                <!DOCTYPE html>
                <html lang="en">
                <head>
                <meta charset="utf-8">
                <meta name="viewport" content="width=device-width, initial-scale=1">
                """);
        html.append("<title>");
        html.append(escaped(request.title())).append(" \u2013 cutting plan</title>\n<style>\n");
        html.append(SheetStyle.CSS).append("</style>\n</head>\n<body>\n<main>\n<header>\n<h1>");
        html.append(escaped(request.title())).append("</h1>\n<p class=\"lead\">");
        html.append(escaped(request.workpiece().material().name() + ", "
                + ReportText.of(Kind.LENGTH, request.workpiece().thickness(), Units.MILLIMETRE) + ", "
                + "cut quality " + request.quality().label() + " unless stated otherwise"));
        html.append("</p>\n</header>\n");
        figures();
        part();
        html.append("<div class=\"pair\">\n");
        figure("Kerf", KerfDrawing.svg(plan.kerf()), KerfDrawing.caption(plan.kerf()));
        figure(
                "Feed rate over thickness",
                FeedChart.svg(plan),
                "Band: 95 % interval of the model in this material. Dot: feed rate of this plan.");
        html.append("</div>\n<div class=\"pair\">\n");
        conditions();
        outcome();
        html.append("</div>\n");
        job();
        cuts();
        cautions();
        evidence();
        html.append("</main>\n</body>\n</html>\n");
        return html.toString();
    }

    private void figures() {
        html.append("<dl class=\"figures\">\n");
        fact("Cutting time", ReportText.time(plan.cuttingTime().si()));
        fact("Feed rate", ReportText.best(plan.feed(), Units.MILLIMETRE_PER_MINUTE));
        fact(
                "Cutting length",
                ReportText.of(Kind.LENGTH, plan.request().program().cuttingLength(), Units.METRE));
        fact("Abrasive", ReportText.best(plan.abrasive(), Units.KILOGRAM));
        fact("Water", ReportText.best(plan.water(), Units.LITRE));
        fact("Kerf offset", ReportText.best(plan.kerf().offset(), Units.MILLIMETRE));
        html.append("</dl>\n");
    }

    private void fact(String label, String value) {
        html.append("<div><dt>")
                .append(label)
                .append("</dt><dd>")
                .append(escaped(value))
                .append("</dd></div>\n");
    }

    private void part() {
        html.append("<figure class=\"whole\">\n<h2>Feed rates on the part</h2>\n");
        html.append(PartDrawing.svg(plan)).append('\n').append(PartDrawing.legend(plan));
        html.append("""
                <figcaption>Each block in the colour of its feed rate; rings mark the pierce points.</figcaption>
                </figure>
                """);
    }

    private void figure(String heading, String svg, String caption) {
        html.append("<figure>\n<h2>").append(heading).append("</h2>\n").append(svg);
        html.append("\n<figcaption>").append(escaped(caption)).append("</figcaption>\n</figure>\n");
    }

    private void conditions() {
        PlanRequest request = plan.request();
        AbrasiveJet jet = request.jet();
        open("Conditions");
        row("Pressure (gauge)", ReportText.of(Kind.PRESSURE, jet.water().pressure(), Units.MEGAPASCAL));
        row(
                "Orifice",
                ReportText.of(Kind.LENGTH, jet.head().orifice().bore(), Units.MILLIMETRE) + ", "
                        + jet.head().orifice().jewel().name().toLowerCase(Locale.ROOT));
        row(
                "Focusing tube",
                ReportText.of(Kind.LENGTH, jet.head().tube().bore(), Units.MILLIMETRE) + " bore, "
                        + ReportText.of(Kind.LENGTH, jet.head().tube().length(), Units.MILLIMETRE) + " long");
        row("Stand-off distance", ReportText.of(Kind.LENGTH, jet.head().standOff(), Units.MILLIMETRE));
        row(
                "Abrasive",
                jet.abrasive().name() + " " + jet.abrasive().mesh().name() + ", "
                        + ReportText.of(Kind.MASS_FLOW, jet.abrasiveFlow(), Units.GRAM_PER_MINUTE));
        row("Water flow rate", ReportText.of(Kind.VOLUME_FLOW, jet.water().volumeFlow(), Units.LITRE_PER_MINUTE));
        row("Rated hydraulic power", ReportText.of(Kind.POWER, jet.water().ratedHydraulicPower(), Units.KILOWATT));
        row("Jet on, jet off", request.program().codes().toString());
        row("Lag tolerance", ReportText.of(Kind.LENGTH, request.lagTolerance(), Units.MILLIMETRE));
        close();
    }

    private void outcome() {
        open("Result");
        row(
                "Feed rate, cut quality " + plan.request().quality().label(),
                ReportText.of(plan.feed(), Units.MILLIMETRE_PER_MINUTE));
        row("Cutting time", ReportText.time(plan.cuttingTime()));
        row("Rapid traverse", ReportText.time(plan.rapidTimeSi()));
        row("Water", ReportText.of(plan.water(), Units.LITRE));
        row("Abrasive", ReportText.of(plan.abrasive(), Units.KILOGRAM));
        row("Energy at the orifice", ReportText.of(plan.energy(), Units.KILOWATT_HOUR));
        row("Kerf offset", ReportText.of(plan.kerf().offset(), Units.MILLIMETRE));
        row("Taper per side", ReportText.of(plan.kerf().taperPerSide(), Units.DEGREE));
        row(
                "Minimum inner radius",
                feature(plan.features().smallestRadiusSi()) + "; the jet leaves at least "
                        + ReportText.best(plan.kerf().minimumInnerRadius(), Units.MILLIMETRE));
        row(
                "Minimum slot width",
                feature(plan.features().smallestSlotSi()) + "; the jet requires at least "
                        + ReportText.best(plan.kerf().minimumSlotWidth(), Units.MILLIMETRE));
        close();
    }

    private void job() {
        open("Job");
        job.facts().forEach(this::row);
        close();
    }

    private static String feature(OptionalDouble lengthM) {
        return lengthM.isPresent() ? QuantityText.round(lengthM.getAsDouble() * 1000, 3) + " mm" : "none";
    }

    private void open(String heading) {
        html.append("<section>\n<h2>").append(heading).append("</h2>\n<table class=\"facts\">\n");
    }

    private void row(String label, String value) {
        html.append("<tr><th scope=\"row\">")
                .append(escaped(label))
                .append("</th><td>")
                .append(escaped(value))
                .append("</td></tr>\n");
    }

    private void close() {
        html.append("</table>\n</section>\n");
    }

    private void cuts() {
        List<CutPlan> cuts = plan.cuts();
        html.append("""
                <section>
                <h2>Cuts</h2>
                <div class="scroll"><table class="list">
                <thead><tr><th scope="col">cut</th><th scope="col">cut quality</th><th scope="col" class="n">line</th>
                <th scope="col" class="n">blocks</th><th scope="col" class="n">length mm</th>
                <th scope="col" class="n">time</th></tr></thead>
                <tbody>
                """);
        for (CutPlan cut : cuts.subList(0, Math.min(MAX_CUTS, cuts.size()))) {
            String name = cut.cut().name().isEmpty() ? "unnamed" : cut.cut().name();
            html.append("<tr><th scope=\"row\">").append(escaped(name)).append("</th><td>");
            html.append(cut.quality().label()).append("</td>");
            number(Integer.toString(cut.cut().line()));
            number(Integer.toString(cut.cut().size()));
            number(QuantityText.round(Kind.LENGTH.si(cut.path().length()) * 1000, 4));
            number(ReportText.time(cut.timeSi()));
            html.append("</tr>\n");
        }
        html.append("</tbody>\n</table></div>\n");
        if (cuts.size() > MAX_CUTS) {
            html.append("<p>And ").append(cuts.size() - MAX_CUTS).append(" more; the CSV of blocks lists all.</p>\n");
        }
        html.append("</section>\n");
    }

    private void number(String text) {
        html.append("<td class=\"n\">").append(text).append("</td>");
    }

    private void cautions() {
        html.append("<section>\n<h2>Cautions</h2>\n<ul class=\"cautions\">\n");
        for (Caution caution : Remarks.cautions(plan, job)) {
            String severity = caution.severity().name().toLowerCase(Locale.ROOT);
            html.append("<li class=\"")
                    .append(severity)
                    .append("\"><strong>")
                    .append(severity)
                    .append("</strong> ");
            html.append(escaped(sentence(caution.text()))).append("</li>\n");
        }
        html.append("</ul>\n</section>\n");
    }

    private static String sentence(String text) {
        String begun = text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
        return begun.endsWith(".") ? begun : begun + ".";
    }

    private void evidence() {
        html.append("<section>\n<h2>Evidence</h2>\n<dl class=\"evidence\">\n");
        for (Map.Entry<String, Evidence> entry : Remarks.evidence(plan).entrySet()) {
            Evidence evidence = entry.getValue();
            html.append("<dt>").append(escaped(entry.getKey())).append("</dt><dd><em>");
            html.append(evidence.grade().label()).append("</em> ");
            html.append(escaped(sentence(evidence.source().toString())));
            html.append(evidence.note().isEmpty() ? "" : " " + escaped(sentence(evidence.note())))
                    .append("</dd>\n");
        }
        html.append("</dl>\n</section>\n");
    }
}
