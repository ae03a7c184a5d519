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
import dev.waterjet.measure.Message;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Function;
import javax.measure.quantity.Speed;

/**
 * Calibrations of a shop by material and setting, itself a feed model. For a material that was calibrated the calibration
 * answers, with its own material and uncertainty; for any other the model of the set, with the caution {@code not-calibrated}.
 * So a calibration is not applied to a wrong material. Of several calibrations of one material the one answers whose orifice
 * and focusing tube are nearest to those of the jet; with other bores than those of its cuts its estimates are wider.
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
     * Returns this set with a calibration; it replaces one of the same material with the same orifices and focusing tubes.
     *
     * @param calibration the calibration
     * @return the set with that calibration
     */
    public CalibrationSet with(CalibratedFeed calibration) {
        List<CalibratedFeed> more = new ArrayList<>(values.calibrations);
        more.removeIf(old -> isSame(old.material(), calibration.material()) && isSameHead(old, calibration));
        more.add(calibration);
        return new CalibrationSet(new Values(values.model, more));
    }

    private static boolean isSame(Material one, Material other) {
        return one.id().equals(other.id());
    }

    private static boolean isSameHead(CalibratedFeed one, CalibratedFeed other) {
        return one.cuts().stream().allMatch(cut -> other.distance(cut.jet()) == 0)
                && other.cuts().stream().allMatch(cut -> one.distance(cut.jet()) == 0);
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
     * @return the calibration that was added last; empty if the material was not calibrated
     */
    public Optional<CalibratedFeed> calibration(Material material) {
        Objects.requireNonNull(material, "material");
        return values.calibrations.stream()
                .filter(calibration -> isSame(calibration.material(), material))
                .reduce((first, second) -> second);
    }

    /**
     * Returns the calibration that answers for a material and a jet.
     *
     * @param material the material
     * @param jet the jet
     * @return the calibration with the nearest orifice and focusing tube, of equally near ones the last; empty if the material
     *     was not calibrated
     */
    public Optional<CalibratedFeed> calibration(Material material, JetSettings jet) {
        Objects.requireNonNull(jet, "jet");
        Objects.requireNonNull(material, "material");
        return values.calibrations.stream()
                .filter(calibration -> isSame(calibration.material(), material))
                .reduce((first, second) -> first.distance(jet) < second.distance(jet) ? first : second);
    }

    private <R> R answer(
            JetSettings jet,
            Material material,
            BiFunction<CalibratedFeed, Material, R> own,
            Function<FeedModel, R> other) {
        Optional<CalibratedFeed> calibration = calibration(material, jet);
        return calibration.isPresent()
                ? own.apply(calibration.get(), calibration.get().material())
                : other.apply(values.model);
    }

    @Override
    public String name() {
        int count = values.calibrations.size();
        return values.model.name() + " with " + count + (count == 1 ? " calibration" : " calibrations");
    }

    /** {@return the evidence for the model of materials that were not calibrated; each calibration has its own} */
    @Override
    public Evidence evidence() {
        return values.model.evidence();
    }

    @Override
    public double separationFeedSi(JetSettings jet, Material material, double depthM) {
        Objects.requireNonNull(jet, "jet");
        Objects.requireNonNull(material, "material");
        return answer(
                jet,
                material,
                (own, calibrated) -> own.separationFeedSi(jet, calibrated, depthM),
                model -> model.separationFeedSi(jet, material, depthM));
    }

    @Override
    public double separationDepthSi(JetSettings jet, Material material, double feedMPerS) {
        Objects.requireNonNull(jet, "jet");
        Objects.requireNonNull(material, "material");
        return answer(
                jet,
                material,
                (own, calibrated) -> own.separationDepthSi(jet, calibrated, feedMPerS),
                model -> model.separationDepthSi(jet, material, feedMPerS));
    }

    /**
     * {@inheritDoc}
     *
     * <p>Of several calibrations of the material the largest.
     */
    @Override
    public double relativeUncertainty(Material material) {
        return values.calibrations.stream()
                .filter(calibration -> isSame(calibration.material(), material))
                .mapToDouble(calibration -> calibration.relativeUncertainty(calibration.material()))
                .max()
                .orElseGet(() -> values.model.relativeUncertainty(material));
    }

    @Override
    public double feedSi(JetSettings jet, Material material, double thicknessM, double index) {
        return answer(
                jet,
                material,
                (own, calibrated) -> own.feedSi(jet, calibrated, thicknessM, index),
                model -> model.feedSi(jet, material, thicknessM, index));
    }

    @Override
    public double indexSi(JetSettings jet, Material material, double thicknessM, double feedMPerS) {
        Objects.requireNonNull(jet, "jet");
        return answer(
                jet,
                material,
                (own, calibrated) -> own.indexSi(jet, calibrated, thicknessM, feedMPerS),
                model -> model.indexSi(jet, material, thicknessM, feedMPerS));
    }

    @Override
    public double maximumFeedSi() {
        return values.model.maximumFeedSi();
    }

    @Override
    public List<Caution> cautions(JetSettings jet, Material material, double depthM, double feedMPerS) {
        Objects.requireNonNull(jet, "jet");
        Objects.requireNonNull(material, "material");
        return answer(
                jet,
                material,
                (own, calibrated) -> own.cautions(jet, calibrated, depthM, feedMPerS),
                model -> uncalibrated(material, model.cautions(jet, material, depthM, feedMPerS)));
    }

    private List<Caution> uncalibrated(Material material, List<Caution> cautions) {
        // a fit of the whole shop has its own caution
        if (values.calibrations.isEmpty() || values.model instanceof ShopFit) {
            return cautions;
        }
        List<Caution> all = new ArrayList<>(cautions);
        all.add(Caution.warning(
                Message.of("not-calibrated", "no calibration is for {material}: the published model was used")
                        .with("material", material.name())));
        return List.copyOf(all);
    }

    @Override
    public Estimate<Speed> feed(AbrasiveJet jet, Workpiece workpiece, double index) {
        Objects.requireNonNull(workpiece, "workpiece");
        Optional<CalibratedFeed> own = calibration(workpiece.material(), jet);
        return own.isPresent()
                ? own.get().feed(jet, Workpiece.of(own.get().material(), workpiece.thickness()), index)
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
