package dev.waterjet.examples.plan;

import static dev.waterjet.examples.chart.SvgText.escaped;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Evidence;
import dev.waterjet.examples.chart.SvgText;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Units;
import dev.waterjet.part.Box;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Sheet of a plan: one self-contained HTML file of two printed pages. The first is read at the machine, the second explains
 * the numbers.
 */
public final class Sheet {

    private static final int MAX_GROUPS = 24;
    private static final Pattern INPUT = Pattern.compile("<meta name=\"input\" content=\"([^\"]*)\">");

    private static final int MAX_FINDINGS = 12;

    private final PlanReport report;
    private final JobFacts job;
    private final LocalDate date;
    private final StringBuilder html = new StringBuilder();

    private Sheet(PlanReport report, JobFacts job, LocalDate date) {
        this.report = report;
        this.job = job;
        this.date = date;
    }

    /**
     * Returns the page.
     *
     * @param report the plan
     * @param job piercing, wear and cost
     * @param date date of the sheet
     * @return the HTML
     */
    public static String html(PlanReport report, JobFacts job, LocalDate date) {
        return new Sheet(report, job, date).page();
    }

    private String page() {
        html.append("""
            <!DOCTYPE html>
            <html lang="en">
            <head>
            <meta charset="utf-8">
            <meta name="viewport" content="width=device-width, initial-scale=1">
            """);
        html.append("<meta name=\"input\" content=\"")
                .append(escaped(report.inputName()))
                .append("\">\n");
        html.append("<title>").append(escaped(report.title())).append(" \u2013 cutting plan</title>\n<style>\n");
        html.append(SheetStyle.CSS).append("</style>\n</head>\n<body>\n<main>\n<div class=\"page\">\n");
        head();
        figures();
        cautions(true);
        drawing();
        html.append("<div class=\"pair\">\n");
        setup();
        offset();
        html.append("</div>\n");
        cuts();
        signOff();
        html.append("</div>\n<div class=\"page\">\n");
        html.append("<div class=\"pair\">\n");
        figure("Kerf", KerfDrawing.svg(report.kerf(), report.units().length()), KerfText.caption(report));
        figure(
                "Feed rate over thickness",
                FeedChart.svg(report),
                "Band: 95 % interval of the model in this material. Dot: feed rate of this plan.");
        Prediction predicted = Prediction.of(report);
        html.append("</div>\n<div class=\"pair\">\n");
        uncertainty();
        html.append("<div>\n");
        job();
        prediction(predicted);
        html.append("</div>\n");
        html.append("</div>\n");
        deviations(predicted);
        html.append("<div class=\"pair\">\n");
        cautions(false);
        findings();
        html.append("</div>\n");
        evidence();
        html.append("</div>\n</main>\n</body>\n</html>\n");
        return html.toString();
    }

    /**
     * Returns the input for which a sheet was written.
     *
     * @param file file of the sheet
     * @return file name of the input; empty if there is no such file, or it is no sheet
     * @throws IOException if the file cannot be read
     */
    public static Optional<String> input(Path file) throws IOException {
        if (!Files.isRegularFile(file)) {
            return Optional.empty();
        }
        Matcher found = INPUT.matcher(Files.readString(file, StandardCharsets.ISO_8859_1));
        return found.find()
                ? Optional.of(SvgText.unescaped(
                        new String(found.group(1).getBytes(StandardCharsets.ISO_8859_1), StandardCharsets.UTF_8)))
                : Optional.empty();
    }

    private void head() {
        html.append("<header>\n<h1>").append(escaped(report.title())).append("</h1>\n<p class=\"lead\">");
        html.append(escaped("Part " + report.size() + ", plate of "
                + report.workpiece().material().name() + " "
                + ReportText.of(
                        Kind.LENGTH,
                        report.workpiece().thickness(),
                        report.units().length())
                + ", cut quality " + report.quality().label() + " unless stated otherwise"));
        html.append("</p>\n<p class=\"lead\">");
        html.append(escaped("Program " + report.writtenName() + ", checksum "
                + Checksum.of(report.written().text()) + ", " + date));
        html.append("</p>\n</header>\n");
    }

    private void figures() {
        html.append("<dl class=\"figures\">\n");
        fact("Jet on", ReportText.time(report.plan().work().jetTime().si()));
        fact(
                "Time on the table",
                ReportText.time(report.plan().work().jetTime().si()
                        + Kind.TIME.si(report.plan().work().idleTime())));
        fact("Pierces", Integer.toString(report.plan().pierces()));
        fact("Feed rate", ReportText.best(report.feed(), report.units().feed()));
        fact(
                "Cutting length",
                ReportText.of(
                        Kind.LENGTH,
                        report.program().cuttingLength(),
                        report.units().path()));
        fact("Abrasive", ReportText.best(report.abrasive(), report.units().mass()));
        html.append("</dl>\n");
    }

    private void fact(String label, String value) {
        html.append("<div><dt>")
                .append(label)
                .append("</dt><dd>")
                .append(escaped(value))
                .append("</dd></div>\n");
    }

    private void drawing() {
        Box box = report.part();
        html.append("<figure class=\"whole\">\n");
        html.append(PartDrawing.svg(report)).append('\n').append(PartDrawing.legend(report));
        html.append("<figcaption>")
                .append(escaped((PartDrawing.hasMarks(report) ? "Numbers: order of pierces. Arrows: direction. " : "")
                        + "The part lies from X "
                        + place(box.minimum().xSi())
                        + ", Y "
                        + place(box.minimum().ySi())
                        + " on."))
                .append("</figcaption>\n</figure>\n");
    }

    /** A coordinate without the noise of rounding. */
    private String place(double metres) {
        return ReportText.of(
                Kind.LENGTH,
                Kind.LENGTH.of(Math.rint(metres * 1e7) / 1e7),
                report.units().length());
    }

    private void figure(String heading, String svg, String caption) {
        html.append("<figure>\n<h2>").append(heading).append("</h2>\n").append(svg);
        html.append("\n<figcaption>").append(escaped(caption)).append("</figcaption>\n</figure>\n");
    }

    private void setup() {
        AbrasiveJet jet = report.jet();
        ReportUnits units = report.units();
        open("Set up");
        row("Pressure (gauge)", ReportText.of(Kind.PRESSURE, jet.water().pressure(), units.pressure()));
        row(
                "Orifice",
                ReportText.of(Kind.LENGTH, jet.head().orifice().bore(), units.length()) + ", "
                        + jet.head().orifice().jewel().name().toLowerCase(Locale.ROOT));
        row(
                "Focusing tube",
                ReportText.of(Kind.LENGTH, jet.head().tube().bore(), units.length()) + " bore, "
                        + ReportText.of(Kind.LENGTH, jet.head().tube().length(), units.length()) + " long");
        row("Stand-off distance", ReportText.of(Kind.LENGTH, jet.head().standOff(), units.length()));
        row(
                "Abrasive",
                jet.abrasive().name() + " " + jet.abrasive().mesh().name() + ", "
                        + ReportText.of(Kind.MASS_FLOW, jet.abrasiveFlow(), units.abrasiveFlow()));
        close();
    }

    private void offset() {
        open("Kerf offset");
        row("Offset", KerfText.offset(report));
        row(
                "Side",
                report.hasOffset()
                        ? "by the machine, on the side of the scrap (G41, G42)"
                        : "none: the program is the path of the jet axis");
        row("Jet on, jet off", report.program().codes().toString());
        row(
                "Blocks",
                report.program().size() + ", written as " + report.written().size());
        close();
    }

    private void uncertainty() {
        ReportUnits units = report.units();
        open("Result and uncertainty");
        row("Feed rate, cut quality " + report.quality().label(), ReportText.of(report.feed(), units.feed()));
        row("Cutting time", ReportText.time(report.plan().cuttingTime()));
        row("Rapid traverse", ReportText.time(Kind.TIME.si(report.plan().rapidTime())));
        report.plan().timeByLimit().forEach((limit, time) -> limit(limit.label(), Kind.TIME.si(time)));
        row("Water", ReportText.of(report.water(), units.volume()));
        row("Abrasive", ReportText.of(report.abrasive(), units.mass()));
        row("Energy at the orifice", ReportText.of(report.energy(), Units.KILOWATT_HOUR));
        row("Kerf offset", KerfText.offsetAndModel(report));
        row("Taper per side", ReportText.of(report.kerf().taperPerSide(), Units.DEGREE));
        row("Minimum inner radius of the jet", KerfText.minimumInnerRadius(report));
        row("Minimum slot of the jet", KerfText.minimumSlot(report));
        close();
    }

    /** Limits that govern less than a hundredth of the time are left out. */
    private void limit(String label, double seconds) {
        if (seconds > 0.01 * report.plan().cuttingTime().si()) {
            row("governed by " + label, ReportText.time(seconds));
        }
    }

    private void job() {
        open("Job");
        job.facts().forEach(this::row);
        close();
    }

    /** Deviations beside those of a straight cut, predicted from the plan. */
    private void prediction(Prediction predicted) {
        open("Predicted cut");
        predicted.facts().forEach(this::row);
        close();
    }

    /** Drawing of the worst contour, on the screen only: two printed pages have no room for it. */
    private void deviations(Prediction predicted) {
        if (!predicted.svg().isEmpty()) {
            html.append("<figure class=\"screen\">\n<h2>Predicted deviations</h2>\n")
                    .append(predicted.svg())
                    .append("\n<figcaption>Beside those of a straight cut, of the contour with the largest one."
                            + "</figcaption>\n</figure>\n");
        }
    }

    private void open(String heading) {
        html.append("<section>\n<h2>").append(heading).append("</h2>\n<table class=\"facts\">\n");
    }

    private void row(String label, String value) {
        html.append("<tr><th scope=\"row\">").append(escaped(label)).append("</th><td>");
        html.append(escaped(value)).append("</td></tr>\n");
    }

    private void close() {
        html.append("</table>\n</section>\n");
    }

    private void cuts() {
        List<CutGroup> groups = CutGroup.of(report);
        html.append("<section>\n"
                        + "<h2>Cuts</h2>\n"
                        + "<div class=\"scroll\"><table class=\"list\">\n"
                        + "<thead><tr><th scope=\"col\">cut</th><th scope=\"col\" class=\"n\">no.</th><th"
                        + " scope=\"col\">quality</th><th scope=\"col\" class=\"n\">feed ")
                .append(Units.symbol(report.units().feed()));
        html.append("</th><th scope=\"col\" class=\"n\">length ")
                .append(Units.symbol(report.units().length()));
        html.append("</th><th scope=\"col\" class=\"n\">time</th></tr></thead>\n<tbody>\n");
        for (CutGroup group : groups.subList(0, Math.min(MAX_GROUPS, groups.size()))) {
            html.append("<tr><th scope=\"row\">").append(escaped(group.label())).append("</th>");
            html.append("<td class=\"n order\">").append(group.numbers()).append("</td>");
            html.append("<td>").append(group.qualities()).append("</td>");
            number(group.feeds(report));
            number(group.length(report.units()));
            number(ReportText.time(group.timeS()));
            html.append("</tr>\n");
        }
        html.append("</tbody>\n</table></div>\n");
        if (groups.size() > MAX_GROUPS) {
            html.append("<p>").append(groups.size() - MAX_GROUPS).append(" more kinds; the CSV lists all.</p>\n");
        }
        html.append("</section>\n");
    }

    private void number(String text) {
        html.append("<td class=\"n\">").append(text).append("</td>");
    }

    private void signOff() {
        html.append("<dl class=\"sign\">");
        for (String field : List.of("Operator", "Date", "Plate, heat no.", "First part checked")) {
            html.append("<div><dt>").append(field).append("</dt><dd></dd></div>");
        }
        html.append("</dl>\n");
    }

    private void cautions(boolean isFirstPage) {
        html.append(isFirstPage ? "<section class=\"first\">\n" : "<section>\n<h2>Notices</h2>\n");
        html.append("<ul class=\"cautions\">\n");
        for (Caution caution : Remarks.cautions(report, job)) {
            boolean isSevere = caution.severity() != Caution.Severity.NOTICE;
            if (isSevere == isFirstPage) {
                String severity = caution.severity().name().toLowerCase(Locale.ROOT);
                html.append("<li class=\"")
                        .append(severity)
                        .append("\"><strong>")
                        .append(severity);
                html.append("</strong> ")
                        .append(escaped(
                                sentence(caution.message().text(report.units().replaced()))))
                        .append("</li>\n");
            }
        }
        html.append("</ul>\n</section>\n");
    }

    private void findings() {
        List<String> findings = report.findingTexts();
        if (findings.isEmpty()) {
            return;
        }
        html.append("<section>\n<h2>Findings</h2>\n<ul class=\"cautions\">\n");
        findings.stream()
                .limit(MAX_FINDINGS)
                .forEach(text -> html.append("<li class=\"warning\">")
                        .append(escaped(sentence(text)))
                        .append("</li>\n"));
        html.append("</ul>\n");
        if (findings.size() > MAX_FINDINGS) {
            html.append("<p>And ").append(findings.size() - MAX_FINDINGS).append(" more.</p>\n");
        }
        html.append("</section>\n");
    }

    private static String sentence(String text) {
        String begun = text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
        return begun.endsWith(".") ? begun : begun + ".";
    }

    private void evidence() {
        html.append("<section>\n<h2>Evidence</h2>\n<dl class=\"evidence\">\n");
        for (Map.Entry<String, Evidence> entry : Remarks.evidence(report).entrySet()) {
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
