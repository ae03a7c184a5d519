package dev.waterjet.fit;

import dev.waterjet.reference.Computed;
import dev.waterjet.reference.Inputs;
import dev.waterjet.reference.Subjects;
import java.util.Map;

/** Subjects of the reference suite in this package: curves of y over x with parameters b1 and b2, from a start. */
public final class FitSubjects implements Subjects {

    @Override
    public Map<String, Subject> subjects() {
        return Map.of(
                "least-squares-parameter",
                in -> Computed.of(fit(in).value(in.text("parameter"))),
                "least-squares-error",
                in -> Computed.of(fit(in).standardError(in.text("parameter"))),
                "least-squares-residual-deviation",
                in -> Computed.of(fit(in).residualDeviation()));
    }

    private static double curve(String name, double x, double[] b) {
        return switch (name) {
            case "b1 (1 - exp(-b2 x))" -> b[0] * (1 - Math.exp(-b[1] * x));
            case "b1 (1 - (1 + b2 x/2)^-2)" -> b[0] * (1 - Math.pow(1 + b[1] * x / 2, -2));
            case "b1 (1 - (1 + 2 b2 x)^-0.5)" -> b[0] * (1 - Math.pow(1 + 2 * b[1] * x, -0.5));
            case "b1 b2 x/(1 + b2 x)" -> b[0] * b[1] * x / (1 + b[1] * x);
            case "b1 x^b2" -> b[0] * Math.pow(x, b[1]);
            case "b1 + b2 x" -> b[0] + b[1] * x;
            case "b1 exp(-b2 x)" -> b[0] * Math.exp(-b[1] * x);
            default -> throw new IllegalArgumentException(name);
        };
    }

    private static Fit fit(Inputs in) {
        double[] x = Inputs.numbers(in.text("x"));
        double[] start = Inputs.numbers(in.text("start"));
        String name = in.text("curve");
        return LeastSquares.of((i, b) -> curve(name, x[i], b))
                .withParameter("b1", start[0])
                .withParameter("b2", start[1])
                .fit(Inputs.numbers(in.text("y")));
    }
}
