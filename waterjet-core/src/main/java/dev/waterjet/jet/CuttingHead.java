package dev.waterjet.jet;

import dev.waterjet.evidence.Caution;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.hydraulics.WaterJet;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.MassFlow;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Pressure;

/**
 * Orifice, focusing tube and the stand-off at which they are held over the work.
 *
 * <p>Rules of the trade, each of which draws a caution when broken (from memory and common practice): tube bore 2.5 to 4
 * orifice bores, tube length 50 to 100 tube bores, stand-off 1.5 to 4 mm. A tube no wider than its orifice is refused.
 */
public final class CuttingHead implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private static final double USUAL_STAND_OFF_M = 0.002;

    private final Orifice orifice;
    private final FocusingTube tube;
    private final double standOffM;
    private final MixingEfficiency mixing;
    private final List<Caution> cautions;

    private CuttingHead(Orifice orifice, FocusingTube tube, double standOffM, MixingEfficiency mixing) {
        this.orifice = Objects.requireNonNull(orifice, "orifice");
        this.tube = Objects.requireNonNull(tube, "tube");
        this.standOffM = Require.notNegative("stand-off", standOffM, Units.MILLIMETRE);
        this.mixing = Objects.requireNonNull(mixing, "mixing");
        Require.above(
                "focusing-tube bore",
                tube.boreSi(),
                orifice.boreSi(),
                Units.MILLIMETRE,
                "the bore of the orifice: the water would strike the tube");
        this.cautions = rulesBroken();
    }

    private List<Caution> rulesBroken() {
        List<Caution> broken = new ArrayList<>();
        double boreRatio = tube.boreSi() / orifice.boreSi();
        if (boreRatio < 2.5 || boreRatio > 4) {
            broken.add(Caution.warning(
                    "bore-ratio",
                    "the focusing tube is " + QuantityText.round(boreRatio, 3)
                            + " times as wide as the orifice; 2.5 to 4 is usual, about 3 best"));
        }
        double lengthRatio = tube.lengthSi() / tube.boreSi();
        if (lengthRatio < 50 || lengthRatio > 100.5) {
            broken.add(Caution.notice(
                    "tube-length",
                    "the focusing tube is " + QuantityText.round(lengthRatio, 3) + " bores long; 50 to 100 is usual"));
        }
        if (standOffM < 0.0015 || standOffM > 0.004) {
            broken.add(Caution.notice(
                    "stand-off",
                    "stand-off is " + QuantityText.round(standOffM * 1000, 3) + " mm; 1.5 to 4 mm is usual"));
        }
        return List.copyOf(broken);
    }

    /**
     * A head with the usual stand-off of 2 mm and the usual mixing efficiency.
     *
     * @param orifice its orifice
     * @param tube its focusing tube, wider than the orifice
     * @return the head
     */
    public static CuttingHead of(Orifice orifice, FocusingTube tube) {
        return new CuttingHead(orifice, tube, USUAL_STAND_OFF_M, MixingEfficiency.standard());
    }

    /**
     * This head at another stand-off.
     *
     * @param standOff distance from tube to work, zero or more
     * @return the head at that stand-off
     */
    public CuttingHead withStandOff(Quantity<Length> standOff) {
        return new CuttingHead(orifice, tube, Kind.LENGTH.si(standOff), mixing);
    }

    /**
     * This head with another tube, as when it wears.
     *
     * @param tube the tube
     * @return the head with that tube
     */
    public CuttingHead withTube(FocusingTube tube) {
        return new CuttingHead(orifice, tube, standOffM, mixing);
    }

    /**
     * This head with another orifice, as when it wears.
     *
     * @param orifice the orifice
     * @return the head with that orifice
     */
    public CuttingHead withOrifice(Orifice orifice) {
        return new CuttingHead(orifice, tube, standOffM, mixing);
    }

    /**
     * This head with a mixing efficiency of one's own.
     *
     * @param mixing the efficiency
     * @return the head with that efficiency
     */
    public CuttingHead withMixing(MixingEfficiency mixing) {
        return new CuttingHead(orifice, tube, standOffM, mixing);
    }

    /**
     * The jet of this head.
     *
     * @param pressure gauge pressure at the orifice
     * @param abrasive the abrasive
     * @param abrasiveFlow mass flow of abrasive, above zero
     * @return the jet
     * @throws dev.waterjet.measure.DomainException if the largest grain is wider than the tube's bore, so that it must
     *     clog
     */
    public AbrasiveJet jet(Quantity<Pressure> pressure, Abrasive abrasive, Quantity<MassFlow> abrasiveFlow) {
        return AbrasiveJet.of(this, WaterJet.of(orifice, pressure), abrasive, abrasiveFlow);
    }

    /**
     * Rules of the trade that this head breaks.
     *
     * @return the cautions; empty if it breaks none
     */
    public List<Caution> cautions() {
        return cautions;
    }

    /**
     * The orifice.
     *
     * @return the orifice
     */
    public Orifice orifice() {
        return orifice;
    }

    /**
     * The focusing tube.
     *
     * @return the tube
     */
    public FocusingTube tube() {
        return tube;
    }

    /**
     * Distance from the tube to the work.
     *
     * @return the stand-off, in m
     */
    public Quantity<Length> standOff() {
        return Kind.LENGTH.of(standOffM);
    }

    /**
     * Distance from the tube to the work as a number.
     *
     * @return the stand-off in m
     */
    public double standOffSi() {
        return standOffM;
    }

    /**
     * How well water and abrasive mix.
     *
     * @return the efficiency
     */
    public MixingEfficiency mixing() {
        return mixing;
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("cutting head")
                .put("orifice", orifice)
                .put("tube", tube)
                .put("stand_off", Kind.LENGTH, standOffM)
                .put("mixing", mixing)
                .put("cautions", cautions)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof CuttingHead that
                && orifice.equals(that.orifice)
                && tube.equals(that.tube)
                && standOffM == that.standOffM
                && mixing.equals(that.mixing);
    }

    @Override
    public int hashCode() {
        return Objects.hash(orifice, tube, standOffM, mixing);
    }

    @Override
    public String toString() {
        return orifice + ", " + tube;
    }
}
