package dev.waterjet.vessel;

import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * Formulas of thick-walled tubes: elastic by Lame (textbooks), elastic and perfectly plastic by Tresca (Hill, The Mathematical
 * Theory of Plasticity, 1950; form from memory, derived again from the equilibrium of the wall).
 */
final class TubeKernel {

    private static final double ACCURACY = 1e-14;
    private static final int MAX_EVALUATIONS = 200;

    private TubeKernel() {}

    /** p (1 + b2/r2)/(k2 - 1), with the radius relative to the bore. */
    static double hoop(double pressurePa, double ratio, double radiusRatio) {
        double outer = ratio / radiusRatio;
        return pressurePa * (1 + outer * outer) / excess(ratio);
    }

    /** p (1 - b2/r2)/(k2 - 1), with the radius relative to the bore. */
    static double radial(double pressurePa, double ratio, double radiusRatio) {
        double outer = ratio / radiusRatio;
        return -pressurePa * excess(outer) / excess(ratio);
    }

    /** p/(k2 - 1) for closed ends, else 0. */
    static double axial(double pressurePa, double ratio, Ends ends) {
        return ends == Ends.CLOSED ? pressurePa / excess(ratio) : 0;
    }

    /** k2 - 1 without cancellation for thin walls. */
    static double excess(double ratio) {
        return (ratio - 1) * (ratio + 1);
    }

    /** Equivalent stress of three principal stresses. */
    static double equivalent(YieldCriterion criterion, double a, double b, double c) {
        if (criterion == YieldCriterion.TRESCA) {
            return Math.max(a, Math.max(b, c)) - Math.min(a, Math.min(b, c));
        }
        double squares = (a - b) * (a - b) + (b - c) * (b - c) + (c - a) * (c - a);
        return Math.sqrt(squares / 2);
    }

    /** Pressure at which the bore yields, over the yield strength: the inverse of the equivalent stress for a pressure of 1. */
    static double firstYield(YieldCriterion criterion, Ends ends, double ratio) {
        return 1 / equivalent(criterion, hoop(1, ratio, 1), -1, axial(1, ratio, ends));
    }

    /** Pressure at which the whole wall has yielded, over the yield strength: ln k, for Mises times 2/sqrt 3. */
    static double fullPlastic(YieldCriterion criterion, double ratio) {
        double log = Math.log(ratio);
        return criterion == YieldCriterion.TRESCA ? log : 2 / Math.sqrt(3) * log;
    }

    /** Relative growth of the bore volume per pressure. */
    static double compliance(double ratio, double modulusPa, double poissonsRatio, Ends ends) {
        double square = ratio * ratio;
        if (ends == Ends.OPEN) {
            return 2 / modulusPa * ((square + 1) / excess(ratio) + poissonsRatio);
        }
        return (2 * (1 + poissonsRatio) * square + 3 * (1 - 2 * poissonsRatio)) / (excess(ratio) * modulusPa);
    }

    /** Pressure that yields the wall to a radius c, over the yield strength: ln(c/a) + (1 - c2/b2)/2. */
    static double autofrettage(double ratio, double plasticRatio) {
        double rest = plasticRatio / ratio;
        return Math.log(plasticRatio) + (1 - rest) * (1 + rest) / 2;
    }

    /** Plastic radius over that of the bore for a pressure over the yield strength, by Brent's method. */
    static double plasticRatio(double ratio, double pressureOverYield) {
        UnivariateFunction missing = c -> autofrettage(ratio, c) - pressureOverYield;
        if (missing.value(1) >= 0) {
            return 1;
        }
        if (missing.value(ratio) <= 0) {
            return ratio;
        }
        return new BrentSolver(ACCURACY, ACCURACY).solve(MAX_EVALUATIONS, missing, 1, ratio);
    }

    /** Hoop stress at a radius under the autofrettage pressure, over the yield strength. */
    static double hoopUnderAutofrettage(double ratio, double plasticRatio, double radiusRatio) {
        double rest = plasticRatio / ratio;
        if (radiusRatio <= plasticRatio) {
            return Math.log(radiusRatio / plasticRatio) - (1 - rest) * (1 + rest) / 2 + 1;
        }
        double outer = ratio / radiusRatio;
        return rest * rest / 2 * (1 + outer * outer);
    }

    /** Hoop stress that remains without pressure, over the yield strength. */
    static double residualHoop(double ratio, double plasticRatio, double radiusRatio) {
        return hoopUnderAutofrettage(ratio, plasticRatio, radiusRatio)
                - hoop(autofrettage(ratio, plasticRatio), ratio, radiusRatio);
    }

    /** Whether the bore yields in compression on release: p above (1 + beta)/2 s (1 - 1/k2). */
    static boolean isReverseYielding(double ratio, double plasticRatio, double reverse) {
        return autofrettage(ratio, plasticRatio) > (1 + reverse) / 2 * excess(ratio) / (ratio * ratio);
    }

    /** Diameter ratio above which full overstrain yields back: root of ln k = (1 + beta)/2 (1 - 1/k2) above 1. */
    static double criticalRatio(double reverse) {
        double half = (1 + reverse) / 2;
        // below a reverse yield strength of 0 the root has merged with k = 1; its derivative turns at sqrt(2 half)
        UnivariateFunction missing = k -> Math.log(k) - half * excess(k) / (k * k);
        return new BrentSolver(ACCURACY, ACCURACY).solve(MAX_EVALUATIONS, missing, Math.sqrt(2 * half), 4);
    }
}
