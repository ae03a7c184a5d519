package dev.waterjet.uncertainty;

import dev.waterjet.reference.Computed;
import dev.waterjet.reference.Inputs;
import dev.waterjet.reference.Subjects;
import java.util.Map;

/** Subjects of the reference suite in this package. */
public final class UncertaintySubjects implements Subjects {

    @Override
    public Map<String, Subject> subjects() {
        return Map.of(
                "distribution-quantile",
                in -> Computed.of(distribution(in).quantile(in.number("p"))),
                "distribution-deviation",
                in -> Computed.of(distribution(in).standardUncertainty()),
                "coverage-factor",
                in -> Computed.of(
                        Distribution.student(0, 1, in.number("freedom")).quantile((1 + in.number("p")) / 2)),
                "budget-deviation",
                in -> Computed.of(budget(in).standardUncertainty()),
                "budget-freedom",
                in -> Computed.of(budget(in).degreesOfFreedom()),
                "budget-expanded",
                in -> Computed.of(budget(in).expanded(in.number("p"))));
    }

    private static Distribution distribution(Inputs in) {
        double[] a = Inputs.numbers(in.text("parameters"));
        return switch (in.text("distribution")) {
            case "normal" -> Distribution.normal(a[0], a[1]);
            case "student" -> Distribution.student(a[0], a[1], a[2]);
            case "log-normal" -> Distribution.logNormal(a[0], a[1]);
            case "uniform" -> Distribution.uniform(a[0], a[1]);
            case "triangular" -> Distribution.triangular(a[0], a[1], a[2]);
            case "arcsine" -> Distribution.arcsine(a[0], a[1]);
            default -> throw new IllegalArgumentException(in.text("distribution"));
        };
    }

    /** Product of powers of inputs with their standard uncertainties, and their degrees of freedom where given. */
    private static UncertaintyBudget budget(Inputs in) {
        double[] values = Inputs.numbers(in.text("values"));
        double[] deviations = Inputs.numbers(in.text("deviations"));
        double[] powers = Inputs.numbers(in.text("powers"));
        UncertainInputs inputs = UncertainInputs.none();
        for (int i = 0; i < values.length; i++) {
            inputs = inputs.with(
                    "x" + i,
                    in.has("freedom")
                            ? Distribution.student(values[i], deviations[i], Inputs.numbers(in.text("freedom"))[i])
                            : Distribution.normal(values[i], deviations[i]));
        }
        if (in.has("correlation")) {
            inputs = inputs.withCorrelation("x0", "x1", in.number("correlation"));
        }
        return UncertaintyBudget.of(
                x -> {
                    double product = 1;
                    for (int i = 0; i < x.length; i++) {
                        product *= Math.pow(x[i], powers[i]);
                    }
                    return product;
                },
                inputs);
    }
}
