package dev.waterjet.calibrate;

import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.measure.CsvText;
import dev.waterjet.measure.Kind;
import java.util.List;

/** Writer of test cuts as comma-separated text that {@link TestCutReader} reads. */
final class TestCutWriter {

    private static final String HEADER = String.join(
            ",",
            "test",
            Kind.LENGTH.column("thickness"),
            "index",
            Kind.SPEED.column("feed"),
            Kind.PRESSURE.column("pressure"),
            Kind.LENGTH.column("orifice"),
            "discharge_coefficient",
            Kind.LENGTH.column("tube"),
            Kind.LENGTH.column("tube_length"),
            Kind.MASS_FLOW.column("abrasive_flow"),
            "relative_deviation",
            "label");

    private TestCutWriter() {}

    static String write(List<TestCut> cuts) {
        StringBuilder text = new StringBuilder(HEADER).append('\n');
        for (TestCut cut : cuts) {
            AbrasiveJet jet = cut.jet();
            text.append(CsvText.row(List.of(
                            cut.test().text(),
                            number(cut.thicknessSi()),
                            number(cut.index()),
                            number(cut.feedSi()),
                            number(jet.pressureSi()),
                            number(jet.orificeBoreSi()),
                            discharge(jet.head().orifice()),
                            number(jet.tubeBoreSi()),
                            number(jet.head().tube().lengthSi()),
                            number(jet.abrasiveFlowSi()),
                            number(cut.relativeDeviation()),
                            cut.label())))
                    .append('\n');
        }
        return text.toString();
    }

    /** The coefficient where it was given; the default one, which is uncertain, is left out. */
    private static String discharge(Orifice orifice) {
        boolean isDefault = orifice.dischargeCoefficient().standardUncertaintySi() > 0;
        return isDefault ? "" : number(orifice.dischargeCoefficient().si());
    }

    private static String number(double value) {
        return Double.toString(value);
    }
}
