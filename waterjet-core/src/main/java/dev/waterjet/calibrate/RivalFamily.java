package dev.waterjet.calibrate;

import dev.waterjet.evidence.Evidence;
import dev.waterjet.feed.DeclinationFeed;
import dev.waterjet.feed.ErosionFeed;
import dev.waterjet.feed.FeedModel;
import dev.waterjet.feed.FlowStrengths;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.feed.SpecificEnergyFeed;
import dev.waterjet.feed.ThresholdFeed;
import dev.waterjet.fit.LeastSquares;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.material.Material;
import dev.waterjet.measure.Kind;
import java.util.List;

/** Families of the models beside machinability. */
final class RivalFamily {

    private RivalFamily() {}

    /** Specific cutting energy. */
    record Energy(Material start) implements Family {

        @Override
        public LeastSquares ask(LeastSquares question, List<TestCut> cuts) {
            double energy = SpecificEnergyFeed.ofSteel().specificEnergy(start).si();
            return question.withPositiveParameter("specific energy in J/m3", energy);
        }

        @Override
        public FeedModel model(double[] parameters, double scatter, Evidence evidence) {
            return SpecificEnergyFeed.of(start, Kind.ENERGY_DENSITY.of(parameters[0]), scatter, evidence);
        }

        @Override
        public Material material(double[] parameters, double relativeUncertainty, Evidence evidence) {
            return start;
        }
    }

    /** Flow strength of the erosion model. */
    record Erosion(Material start, ErosionFeed model) implements Family {

        private static final double USUAL_STRENGTH_PA = 1e10;

        @Override
        public LeastSquares ask(LeastSquares question, List<TestCut> cuts) {
            double strength = FlowStrengths.standard().strengthSi(start).orElse(USUAL_STRENGTH_PA);
            return question.withPositiveParameter("flow strength in Pa", strength);
        }

        @Override
        public FeedModel model(double[] parameters, double scatter, Evidence evidence) {
            return model.withStrengths(FlowStrengths.standard().with(start, Kind.PRESSURE.of(parameters[0])))
                    .withModelUncertainty(scatter, evidence);
        }

        @Override
        public Material material(double[] parameters, double relativeUncertainty, Evidence evidence) {
            return start;
        }
    }

    /** Coefficient and threshold of the power law; the jet is one of the cuts'. */
    record Threshold(Material start, AbrasiveJet jet, double unitMPerS) implements Family {

        private static final double USUAL_THRESHOLD_SHARE = 0.2;

        @Override
        public LeastSquares ask(LeastSquares question, List<TestCut> cuts) {
            double lowest = cuts.stream()
                    .mapToDouble(cut -> cut.jet().water().pressureSi())
                    .min()
                    .orElse(0);
            double threshold = USUAL_THRESHOLD_SHARE * lowest;
            TestCut first = cuts.get(0);
            double perUnit = law(1e-9, threshold).separationDepthSi(first.jet(), start, first.feedSi());
            return question.withPositiveParameter(
                            "coefficient in m/Pa", 1e-9 * first.index() * first.thicknessSi() / perUnit)
                    .withPositiveParameter("threshold pressure in Pa", threshold);
        }

        private ThresholdFeed law(double coefficient, double thresholdPa) {
            return ThresholdFeed.of(start, jet, coefficient, Kind.PRESSURE.of(thresholdPa), Kind.SPEED.of(unitMPerS));
        }

        @Override
        public FeedModel model(double[] parameters, double scatter, Evidence evidence) {
            return law(parameters[0], parameters[1]).withModelUncertainty(scatter, evidence);
        }

        @Override
        public Material material(double[] parameters, double relativeUncertainty, Evidence evidence) {
            return start;
        }
    }

    /** Machinability and the exponent of the declination. */
    record Declination(Material start) implements Family {

        @Override
        public LeastSquares ask(LeastSquares question, List<TestCut> cuts) {
            return question.withPositiveParameter(MachinabilityFamily.MACHINABILITY, start.machinabilitySi())
                    .withPositiveParameter("declination exponent", 1);
        }

        @Override
        public FeedModel model(double[] parameters, double scatter, Evidence evidence) {
            return DeclinationFeed.linear(MachinabilityFeed.published()
                            .withModelUncertainty(scatter)
                            .withEvidence(evidence))
                    .withExponent(parameters[1]);
        }

        @Override
        public Material material(double[] parameters, double relativeUncertainty, Evidence evidence) {
            return start.withMachinability(parameters[0], relativeUncertainty, evidence);
        }
    }
}
