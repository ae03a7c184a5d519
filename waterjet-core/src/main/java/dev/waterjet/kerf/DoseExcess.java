package dev.waterjet.kerf;

import dev.waterjet.feed.CutConditions;

/** Logarithm of the dose that a feed leaves over the dose that just separates a depth: ln(u_sep(z)/u). */
sealed interface DoseExcess {

    /** Exponent k of the feed over depth where no feed model is known: that of machinability. */
    double REFERENCE_EXPONENT = 1.15;

    /**
     * Excess at a depth.
     *
     * @param depthM depth z, 0 or more
     * @param separationDepthM depth H that the feed just separates
     * @return ln(u_sep(z)/u_sep(H)); infinite at the top side
     */
    double at(double depthM, double separationDepthM);

    /** Separation depth at which a depth has an excess: the inverse. */
    double separationDepth(double depthM, double excess);

    /** Slope of the excess over depth, below 0. */
    default double slope(double depthM, double separationDepthM) {
        double step = 1e-4;
        return (at(depthM * (1 + step), separationDepthM) - at(depthM * (1 - step), separationDepthM))
                / (2 * step * depthM);
    }

    /** Excess of conditions of a cut; of a power law where their feed model has no feed for such depths. */
    static DoseExcess of(CutConditions cut) {
        return new OfModel(cut);
    }

    /** Excess of a power law u_sep = (A/z)^k. */
    record OfPower(double exponent) implements DoseExcess {

        @Override
        public double at(double depthM, double separationDepthM) {
            return exponent * Math.log(separationDepthM / depthM);
        }

        @Override
        public double separationDepth(double depthM, double excess) {
            return depthM * Math.exp(excess / exponent);
        }

        @Override
        public double slope(double depthM, double separationDepthM) {
            return -exponent / depthM;
        }
    }

    /** Excess of a feed model. */
    record OfModel(CutConditions cut) implements DoseExcess {

        private static final DoseExcess REFERENCE = new OfPower(REFERENCE_EXPONENT);

        @Override
        public double at(double depthM, double separationDepthM) {
            if (!(depthM > 0)) {
                return Double.POSITIVE_INFINITY;
            }
            double excess = Math.log(cut.separationFeedSi(depthM) / cut.separationFeedSi(separationDepthM));
            return Double.isFinite(excess) ? excess : REFERENCE.at(depthM, separationDepthM);
        }

        @Override
        public double separationDepth(double depthM, double excess) {
            double feed = cut.separationFeedSi(depthM);
            if (!(feed > 0)) {
                return REFERENCE.separationDepth(depthM, excess);
            }
            double slower = feed * Math.exp(-excess);
            return slower > 0 ? cut.separationDepthSi(slower) : Double.POSITIVE_INFINITY;
        }
    }
}
