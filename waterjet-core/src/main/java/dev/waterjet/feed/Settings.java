package dev.waterjet.feed;

import dev.waterjet.jet.Abrasive;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.JetSettings;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Speed;

/**
 * Mutable settings of a jet: one object for all points of a sweep. What is not swept is that of the original jet. Every value
 * has the bits of an {@link AbrasiveJet} with these settings.
 */
final class Settings implements JetSettings {

    private final AbrasiveJet jet;
    private final double wearM;
    private double pressurePa;
    private double orificeM;
    private double tubeM;
    private double abrasiveKgPerS;

    /** Computed when first asked for after a change; NaN before. */
    private double waterSpeedMPerS = Double.NaN;

    private double particleSpeedMPerS = Double.NaN;

    Settings(AbrasiveJet jet) {
        this.jet = jet;
        this.wearM = jet.tubeExitBoreSi() - jet.tubeBoreSi();
        this.pressurePa = jet.pressureSi();
        this.orificeM = jet.orificeBoreSi();
        this.tubeM = jet.tubeBoreSi();
        this.abrasiveKgPerS = jet.abrasiveFlowSi();
    }

    /** Relative uncertainty of a model. */
    static double uncertainty(double relative) {
        return Require.relativeUncertainty("feed rate", relative, "beyond it the feed rate is unknown");
    }

    /** Feed rate of a caller, in m/s. */
    static double feed(Quantity<Speed> feed) {
        return Require.positive(
                "feed rate", Kind.SPEED.si(Objects.requireNonNull(feed, "feed")), Units.MILLIMETRE_PER_MINUTE);
    }

    /** Quality index. */
    static double index(double index) {
        return Require.atLeast("quality index", index, 1, Units.ONE, "below 1 the jet does not separate");
    }

    Settings pressure(double pa) {
        if (pa != pressurePa) {
            pressurePa = pa;
            waterSpeedMPerS = Double.NaN;
            particleSpeedMPerS = Double.NaN;
        }
        return this;
    }

    Settings orifice(double boreM) {
        if (boreM != orificeM) {
            orificeM = boreM;
            particleSpeedMPerS = Double.NaN;
        }
        return this;
    }

    Settings tube(double boreM) {
        tubeM = boreM;
        return this;
    }

    Settings abrasiveFlow(double kgPerS) {
        if (kgPerS != abrasiveKgPerS) {
            abrasiveKgPerS = kgPerS;
            particleSpeedMPerS = Double.NaN;
        }
        return this;
    }

    @Override
    public double pressureSi() {
        return pressurePa;
    }

    @Override
    public double orificeBoreSi() {
        return orificeM;
    }

    @Override
    public double tubeBoreSi() {
        return tubeM;
    }

    /** A swept tube is worn by as much as that of the original jet. */
    @Override
    public double tubeExitBoreSi() {
        return tubeM == jet.tubeBoreSi() ? jet.tubeExitBoreSi() : tubeM + wearM;
    }

    @Override
    public double standOffSi() {
        return jet.standOffSi();
    }

    @Override
    public Abrasive abrasive() {
        return jet.abrasive();
    }

    @Override
    public double abrasiveFlowSi() {
        return abrasiveKgPerS;
    }

    @Override
    public double waterVolumeFlowSi() {
        return jet.water().volumeFlowAtSi(pressurePa, orificeM);
    }

    @Override
    public double waterMassFlowSi() {
        return jet.water().massFlowAtSi(pressurePa, orificeM);
    }

    @Override
    public double waterSpeedSi() {
        if (Double.isNaN(waterSpeedMPerS)) {
            waterSpeedMPerS = jet.water().speedAtSi(pressurePa);
        }
        return waterSpeedMPerS;
    }

    @Override
    public double particleSpeedSi() {
        if (Double.isNaN(particleSpeedMPerS)) {
            particleSpeedMPerS = jet.particleSpeedAtSi(pressurePa, orificeM, abrasiveKgPerS);
        }
        return particleSpeedMPerS;
    }
}
