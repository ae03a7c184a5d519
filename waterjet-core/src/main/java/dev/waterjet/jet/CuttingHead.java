package dev.waterjet.jet;

import dev.waterjet.evidence.Caution;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.hydraulics.WaterJet;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.MassFlow;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Temperature;

/**
 * Abrasive-waterjet cutting head: orifice, focusing tube, stand-off distance and mixing efficiency.
 *
 * <pre>{@code
 * CuttingHead head = CuttingHead.of(
 *         Orifice.sapphire(millimetres(0.33)), FocusingTube.of(millimetres(1.02), millimetres(102)));
 * AbrasiveJet jet = head.jet(megapascals(380), Abrasive.garnet(Mesh.of(80)), gramsPerMinute(450));
 * jet.water().volumeFlow();
 * jet.cautions();
 * }</pre>
 *
 * <p>Geometry outside common practice draws a caution: tube bore 2.5 to 4 orifice bores, tube length 50 to 100 tube bores,
 * stand-off distance 1.5 mm to 4 mm (values from memory), below a tube bore of 0.5 mm 3 to 8 bores (common practice, no
 * source). A tube bore not above the orifice bore is rejected.
 */
public final class CuttingHead implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private static final double DEFAULT_STAND_OFF_M = 0.002;
    /** Bore of the focusing tube below which stand-off distances go with the bore. Common practice, no source. */
    private static final double MICRO_BORE_M = 0.0005;

    private static final double MIN_BORE_RATIO = 2.5;
    private static final double MAX_BORE_RATIO = 4;
    private static final double MIN_LENGTH_RATIO = 50;

    /** 100 with a margin for the rounding of nominal sizes. */
    private static final double MAX_LENGTH_RATIO = 100.5;

    private static final double MIN_STAND_OFF_M = 0.0015;
    private static final double MAX_STAND_OFF_M = 0.004;

    /** Checked content, and the serial form. */
    private record Values(Orifice orifice, FocusingTube tube, double standOffM, MixingEfficiency mixing)
            implements Serializable {

        private static final long serialVersionUID = 1L;

        Values {
            Objects.requireNonNull(orifice, "orifice");
            Objects.requireNonNull(tube, "tube");
            standOffM = Require.notNegative("stand-off distance", standOffM, Units.MILLIMETRE);
            Objects.requireNonNull(mixing, "mixing");
            Require.above(
                    "focusing tube bore", tube.boreSi(), orifice.boreSi(), Units.MILLIMETRE, "the bore of the orifice");
        }

        private Object readResolve() {
            return new CuttingHead(this);
        }
    }

    private final transient Values values;
    private final transient List<Caution> cautions;

    private CuttingHead(Values values) {
        this.values = values;
        this.cautions = cautions(values);
    }

    private static List<Caution> cautions(Values values) {
        List<Caution> cautions = new ArrayList<>();
        double boreRatio = values.tube.boreSi() / values.orifice.boreSi();
        if (boreRatio < MIN_BORE_RATIO || boreRatio > MAX_BORE_RATIO) {
            cautions.add(Caution.warning(Message.of(
                            "bore-ratio",
                            "the focusing tube bore is {ratio} times the orifice bore; common practice is 2.5 to 4")
                    .with("ratio", boreRatio)));
        }
        double lengthRatio = values.tube.lengthSi() / values.tube.boreSi();
        if (lengthRatio < MIN_LENGTH_RATIO || lengthRatio > MAX_LENGTH_RATIO) {
            cautions.add(Caution.notice(Message.of(
                            "tube-length",
                            "the focusing tube length is {ratio} times its bore; common practice is 50 to 100")
                    .with("ratio", lengthRatio)));
        }
        double scale = scale(values.tube);
        if (values.standOffM < MIN_STAND_OFF_M * scale || values.standOffM > MAX_STAND_OFF_M * scale) {
            cautions.add(Caution.notice(Message.of(
                            "stand-off",
                            "the stand-off distance is {stand_off}; common practice is {minimum} to {maximum}")
                    .with("stand_off", Kind.LENGTH, values.standOffM, Units.MILLIMETRE)
                    .with("minimum", Kind.LENGTH, MIN_STAND_OFF_M * scale, Units.MILLIMETRE)
                    .with("maximum", Kind.LENGTH, MAX_STAND_OFF_M * scale, Units.MILLIMETRE)));
        }
        return List.copyOf(cautions);
    }

    /**
     * Returns a head with a stand-off distance of 2 mm, or of 4 bores of a focusing tube below 0.5 mm, and the standard mixing
     * efficiency.
     *
     * @param orifice orifice
     * @param tube focusing tube, its bore above that of the orifice
     * @return the head
     */
    public static CuttingHead of(Orifice orifice, FocusingTube tube) {
        double standOffM = DEFAULT_STAND_OFF_M * scale(Objects.requireNonNull(tube, "tube"));
        return new CuttingHead(new Values(orifice, tube, standOffM, MixingEfficiency.standard()));
    }

    /** Factor on stand-off distances: 1, and for micro heads less in proportion to the bore. */
    private static double scale(FocusingTube tube) {
        return Math.min(1, tube.boreSi() / MICRO_BORE_M);
    }

    /**
     * Returns this head at another stand-off distance.
     *
     * @param standOff distance from the focusing tube to the workpiece, 0 or more
     * @return the head at that stand-off distance
     */
    public CuttingHead withStandOff(Quantity<Length> standOff) {
        Objects.requireNonNull(standOff, "standOff");
        return new CuttingHead(new Values(values.orifice, values.tube, Kind.LENGTH.si(standOff), values.mixing));
    }

    /**
     * Returns this head with another focusing tube, such as a worn one.
     *
     * @param tube focusing tube
     * @return the head with that tube
     */
    public CuttingHead withTube(FocusingTube tube) {
        return new CuttingHead(new Values(values.orifice, tube, values.standOffM, values.mixing));
    }

    /**
     * Returns this head with another orifice, such as a worn one.
     *
     * @param orifice orifice
     * @return the head with that orifice
     */
    public CuttingHead withOrifice(Orifice orifice) {
        return new CuttingHead(new Values(orifice, values.tube, values.standOffM, values.mixing));
    }

    /**
     * Returns this head with another mixing efficiency.
     *
     * @param mixing mixing efficiency
     * @return the head with that efficiency
     */
    public CuttingHead withMixing(MixingEfficiency mixing) {
        return new CuttingHead(new Values(values.orifice, values.tube, values.standOffM, mixing));
    }

    /**
     * Returns the jet of this head, from water of 20 &deg;C.
     *
     * @param pressure gauge pressure at the orifice, above 0 to 1000 MPa
     * @param abrasive abrasive
     * @param abrasiveFlow abrasive flow rate by mass, above 0
     * @return the jet
     * @throws dev.waterjet.measure.DomainException if the maximum grain size is above the bore of the focusing tube, which
     *     would clog
     */
    public AbrasiveJet jet(Quantity<Pressure> pressure, Abrasive abrasive, Quantity<MassFlow> abrasiveFlow) {
        Objects.requireNonNull(abrasiveFlow, "abrasiveFlow");
        return AbrasiveJet.of(this, WaterJet.of(values.orifice, pressure), abrasive, abrasiveFlow);
    }

    /**
     * Returns the jet of this head from water of a temperature.
     *
     * @param pressure gauge pressure at the orifice, above 0
     * @param temperature temperature of the water upstream of the orifice
     * @param abrasive the abrasive
     * @param abrasiveFlow mass flow of abrasive, above 0
     * @return the jet
     * @throws dev.waterjet.measure.DomainException if water is not liquid there
     */
    public AbrasiveJet jet(
            Quantity<Pressure> pressure,
            Quantity<Temperature> temperature,
            Abrasive abrasive,
            Quantity<MassFlow> abrasiveFlow) {
        Objects.requireNonNull(abrasiveFlow, "abrasiveFlow");
        return AbrasiveJet.of(this, WaterJet.of(values.orifice, pressure, temperature), abrasive, abrasiveFlow);
    }

    /** {@return the cautions for geometry outside common practice; empty if there are none} */
    public List<Caution> cautions() {
        return cautions;
    }

    /** {@return the orifice} */
    public Orifice orifice() {
        return values.orifice;
    }

    /** {@return the focusing tube} */
    public FocusingTube tube() {
        return values.tube;
    }

    /** {@return the stand-off distance from the focusing tube to the workpiece} */
    public Quantity<Length> standOff() {
        return Kind.LENGTH.of(values.standOffM);
    }

    /** {@return the stand-off distance, in m} */
    public double standOffSi() {
        return values.standOffM;
    }

    /** {@return the mixing efficiency} */
    public MixingEfficiency mixing() {
        return values.mixing;
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("cutting head")
                .put("orifice", values.orifice)
                .put("tube", values.tube)
                .put("stand_off", Kind.LENGTH, values.standOffM)
                .put("mixing", values.mixing)
                .put("cautions", cautions)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof CuttingHead that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return values.orifice + ", " + values.tube + ", stand-off " + QuantityText.forPeople(Kind.LENGTH, standOff());
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
