package dev.waterjet.calibrate;

import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;

/**
 * Worth of one more test cut: how far it narrows the feed rate that matters.
 *
 * <pre>{@code
 * List<NextCut> ranked = NextCut.rank(own, jet, millimetres(12), List.of(jet, jet.withPressure(megapascals(250))));
 * }</pre>
 *
 * <p>The scatter of a cut and the spread between plates remain, however many cuts are made; below a narrowing of 2 % another cut
 * is not worth its plate.
 *
 * @param jet the jet of the cut
 * @param thickness thickness of its plate
 * @param trialFeed feed rate of the cut: the one that separates with even chances, at which a trial says most
 * @param narrowing share by which a measured separation feed rate would narrow the interval of one more cut at the target; a
 *     single trial narrows the variance of the mean by 2/pi of that
 */
public record NextCut(AbrasiveJet jet, Quantity<Length> thickness, Quantity<Speed> trialFeed, double narrowing)
        implements Described {

    /**
     * Checks the components.
     *
     * @param jet the jet of the cut
     * @param thickness thickness of its plate
     * @param trialFeed feed rate of the cut
     * @param narrowing share by which the interval would narrow
     */
    public NextCut {
        Objects.requireNonNull(thickness, "thickness");
        Objects.requireNonNull(trialFeed, "trialFeed");
        Objects.requireNonNull(jet, "jet");
        thickness = Kind.LENGTH.of(Require.positive("thickness", Kind.LENGTH.si(thickness), Units.MILLIMETRE));
        trialFeed = Kind.SPEED.of(Require.positive("feed rate", Kind.SPEED.si(trialFeed), Units.MILLIMETRE_PER_MINUTE));
        narrowing = Require.finite("narrowing", narrowing, Units.ONE);
    }

    /**
     * Ranks settings of one more cut, each on a new plate.
     *
     * @param own the calibration so far
     * @param target jet at which the feed rate matters
     * @param thickness thickness at which it matters, and of the cuts
     * @param candidates jets with which the cut could be made
     * @return the candidates, the one that narrows most first
     */
    public static List<NextCut> rank(
            CalibratedFeed own, AbrasiveJet target, Quantity<Length> thickness, List<AbrasiveJet> candidates) {
        double thicknessM = Require.positive("thickness", Kind.LENGTH.si(thickness), Units.MILLIMETRE);
        return candidates.stream()
                .map(jet -> of(own.fit(), target, jet, thicknessM))
                .sorted(Comparator.comparingDouble(NextCut::narrowing).reversed())
                .toList();
    }

    private static NextCut of(CutFit fit, AbrasiveJet target, AbrasiveJet jet, double thicknessM) {
        FitPoint at = new FitPoint(target, thicknessM, 1);
        FitPoint candidate = new FitPoint(jet, thicknessM, 1);
        double[] slopes = fit.slopes(at);
        double[][] covariance = fit.solution().covariance();
        double own = fit.scatter() * fit.scatter() + fit.plateScatter() * fit.plateScatter();
        double before = Matrices.square(slopes, covariance) + own;
        double after = Gains.variance(covariance, slopes, fit.slopes(candidate), own) + own;
        double feed = Math.exp(fit.logFeed(candidate, Solution.Part.NEW_PLATE, -1)[0]);
        return new NextCut(jet, Kind.LENGTH.of(thicknessM), Kind.SPEED.of(feed), 1 - Math.sqrt(after / before));
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("next cut")
                .put("jet", jet)
                .put("thickness", Kind.LENGTH, Kind.LENGTH.si(thickness))
                .put("trial_feed", Kind.SPEED, Kind.SPEED.si(trialFeed))
                .put("narrowing", narrowing)
                .map();
    }
}
