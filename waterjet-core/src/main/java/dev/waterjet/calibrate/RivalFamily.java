package dev.waterjet.calibrate;

import dev.waterjet.evidence.Evidence;
import dev.waterjet.feed.DeclinationFeed;
import dev.waterjet.feed.ErosionFeed;
import dev.waterjet.feed.FeedModel;
import dev.waterjet.feed.FlowStrengths;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.feed.SpecificEnergyFeed;
import dev.waterjet.feed.ThresholdFeed;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.material.Material;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.util.List;
import java.util.Objects;

/** Families of the feed models other than machinability. */
final class RivalFamily {

    private RivalFamily() {}

    /** Specific cutting energy of a material. */
    record Energy(Material start) implements Family {

        Energy {
            Objects.requireNonNull(start, "material");
        }

        @Override
        public List<Start> starts(List<TestCut> cuts) {
            double energy = SpecificEnergyFeed.ofSteel().specificEnergy(start).si();
            return List.of(new Start("specific energy in J/m3", energy, true));
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

        /** Start of the search for a material without a published strength. */
        private static final double START_STRENGTH_PA = 1e10;

        Erosion {
            Objects.requireNonNull(start, "material");
            Objects.requireNonNull(model, "model");
        }

        @Override
        public List<Start> starts(List<TestCut> cuts) {
            double strength = FlowStrengths.standard().strengthSi(start).orElse(START_STRENGTH_PA);
            return List.of(new Start("flow strength in Pa", strength, true));
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

    /** Coefficient and threshold of the threshold-pressure model; the jet is that of the cuts. */
    record Threshold(Material start, AbrasiveJet jet, double unitMPerS) implements Family {

        /** Start of the search: threshold over the minimum pressure of the cuts. */
        private static final double START_THRESHOLD_SHARE = 0.2;

        Threshold {
            Objects.requireNonNull(start, "material");
            Objects.requireNonNull(jet, "jet");
            unitMPerS = Require.positive("unit of feed rate", unitMPerS, Units.MILLIMETRE_PER_MINUTE);
        }

        @Override
        public List<Start> starts(List<TestCut> cuts) {
            double minimum = cuts.stream()
                    .mapToDouble(cut -> cut.jet().pressureSi())
                    .min()
                    .orElse(0);
            double threshold = START_THRESHOLD_SHARE * minimum;
            TestCut first = cuts.get(0);
            double perUnit = thresholdFeed(1e-9, threshold).separationDepthSi(first.jet(), start, first.feedSi());
            return List.of(
                    new Start("coefficient in m/Pa", 1e-9 * first.separationDepthSi() / perUnit, true),
                    new Start("threshold pressure in Pa", threshold, true));
        }

        private ThresholdFeed thresholdFeed(double coefficient, double thresholdPa) {
            return ThresholdFeed.of(start, jet, coefficient, Kind.PRESSURE.of(thresholdPa), Kind.SPEED.of(unitMPerS));
        }

        @Override
        public FeedModel model(double[] parameters, double scatter, Evidence evidence) {
            return thresholdFeed(parameters[0], parameters[1]).withModelUncertainty(scatter, evidence);
        }

        @Override
        public Material material(double[] parameters, double relativeUncertainty, Evidence evidence) {
            return start;
        }
    }

    /** Machinability and the exponent of the declination model. */
    record Declination(Material start) implements Family {

        Declination {
            Objects.requireNonNull(start, "start");
        }

        @Override
        public List<Start> starts(List<TestCut> cuts) {
            return List.of(
                    new Start(MachinabilityFamily.MACHINABILITY, start.machinabilitySi(), true),
                    new Start("declination exponent", 1, true));
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
