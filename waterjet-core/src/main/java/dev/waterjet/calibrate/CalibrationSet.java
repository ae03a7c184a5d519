package dev.waterjet.calibrate;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.evidence.Evidence;
import dev.waterjet.feed.FeedModel;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.JetSettings;
import dev.waterjet.material.Material;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import javax.measure.quantity.Speed;

/**
 * Calibrations of a shop by material, itself a feed model. For a material that was calibrated the calibration answers, with
 * its own material and uncertainty; for any other the model of the set. So a calibration is not applied to a wrong material.
 *
 * <pre>{@code
 * CalibrationSet shop = CalibrationSet.of(MachinabilityFeed.published())
 *         .with(Calibration.ofMachinability(steel, MachinabilityFeed.published()).fit(steelCuts))
 *         .with(Calibration.ofMachinability(titanium, MachinabilityFeed.published()).fit(titaniumCuts));
 * CutConditions cut = CutConditions.of(jet, Workpiece.of(steel, millimetres(12)), shop);
 * }</pre>
 *
 * <p>Materials are the same if they have the same id.
 */
public final class CalibrationSet implements FeedModel, Described {

    private static final long serialVersionUID = 1L;

    /** Checked content, and the serial form. */
    private record Values(FeedModel model, List<CalibratedFeed> calibrations) implements Serializable {

        Values {
            Objects.requireNonNull(model, "model");
            calibrations = List.copyOf(calibrations);
        }

        private Object readResolve() {
            return new CalibrationSet(this);
        }
    }

    private final transient Values values;

    private CalibrationSet(Values values) {
        this.values = values;
    }

    /**
     * Returns a set without calibrations.
     *
     * @param model feed model for materials that were not calibrated
     * @return the set
     */
    public static CalibrationSet of(FeedModel model) {
        return new CalibrationSet(new Values(model, List.of()));
    }

    /**
     * Returns this set with a calibration; it replaces one of the same material.
     *
     * @param calibration the calibration
     * @return the set with that calibration
     */
    public CalibrationSet with(CalibratedFeed calibration) {
        List<CalibratedFeed> more = new ArrayList<>(values.calibrations);
        more.removeIf(old -> isSame(old.material(), calibration.material()));
        more.add(calibration);
        return new CalibrationSet(new Values(values.model, more));
    }

    private static boolean isSame(Material one, Material other) {
        return one.id().equals(other.id());
    }

    /** {@return the feed model for materials that were not calibrated} */
    public FeedModel model() {
        return values.model;
    }

    /** {@return the calibrations, in the order in which they were added} */
    public List<CalibratedFeed> calibrations() {
        return values.calibrations;
    }

    /**
     * Returns the calibration of a material.
     *
     * @param material the material
     * @return the calibration; empty if the material was not calibrated
     */
    public Optional<CalibratedFeed> calibration(Material material) {
        for (CalibratedFeed calibration : values.calibrations) {
            if (isSame(calibration.material(), material)) {
                return Optional.of(calibration);
            }
        }
        return Optional.empty();
    }

    private FeedModel modelOf(Material material) {
        Optional<CalibratedFeed> calibration = calibration(material);
        return calibration.isPresent() ? calibration.get() : values.model;
    }

    private Material calibrated(Material material) {
        return calibration(material).map(CalibratedFeed::material).orElse(material);
    }

    @Override
    public String name() {
        return values.model.name() + " with " + values.calibrations.size() + " calibrations";
    }

    /** {@return the evidence for the model of materials that were not calibrated; each calibration has its own} */
    @Override
    public Evidence evidence() {
        return values.model.evidence();
    }

    @Override
    public double separationFeedSi(JetSettings jet, Material material, double depthM) {
        return modelOf(material).separationFeedSi(jet, calibrated(material), depthM);
    }

    @Override
    public double separationDepthSi(JetSettings jet, Material material, double feedMPerS) {
        return modelOf(material).separationDepthSi(jet, calibrated(material), feedMPerS);
    }

    @Override
    public double relativeUncertainty(Material material) {
        return modelOf(material).relativeUncertainty(calibrated(material));
    }

    @Override
    public double feedSi(JetSettings jet, Material material, double thicknessM, double index) {
        return modelOf(material).feedSi(jet, calibrated(material), thicknessM, index);
    }

    @Override
    public double indexSi(JetSettings jet, Material material, double thicknessM, double feedMPerS) {
        return modelOf(material).indexSi(jet, calibrated(material), thicknessM, feedMPerS);
    }

    @Override
    public double maximumFeedSi() {
        return values.model.maximumFeedSi();
    }

    @Override
    public List<Caution> cautions(JetSettings jet, Material material, double depthM, double feedMPerS) {
        return modelOf(material).cautions(jet, calibrated(material), depthM, feedMPerS);
    }

    @Override
    public Estimate<Speed> feed(AbrasiveJet jet, Workpiece workpiece, double index) {
        Optional<CalibratedFeed> calibration = calibration(workpiece.material());
        return calibration.isPresent()
                ? calibration.get().feed(jet, Workpiece.of(calibration.get().material(), workpiece.thickness()), index)
                : FeedModel.super.feed(jet, workpiece, index);
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("calibration set")
                .put("model", values.model.name())
                .put("evidence", values.model.evidence())
                .put("calibrations", values.calibrations)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof CalibrationSet that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return name();
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
