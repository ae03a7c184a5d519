package dev.waterjet.feed;

import dev.waterjet.evidence.Caution;
import dev.waterjet.jet.JetSettings;
import dev.waterjet.material.Material;
import dev.waterjet.material.Workpiece;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * Feed model for layers of several materials: the depth in the material that stands for them is {@code H / sum h_i/D_i(u)}, with
 * the depths D_i of the model in the materials of the layers. It leaves other materials to that model.
 */
record LayeredFeed(FeedModel model, Workpiece workpiece) implements ForwardingFeed {

    private static final long serialVersionUID = 1L;

    private static final double GUESS_M_PER_S = 2e-3;

    LayeredFeed {
        Objects.requireNonNull(model, "model");
        Objects.requireNonNull(workpiece, "workpiece");
    }

    /** The model for a workpiece: layered where it has several materials, as it is where not. */
    static FeedModel of(FeedModel model, Workpiece workpiece) {
        FeedModel base = model instanceof LayeredFeed layered ? layered.model : model;
        return workpiece.hasSeveralMaterials() ? new LayeredFeed(base, workpiece) : base;
    }

    private boolean isOfLayers(Material material) {
        return workpiece.material().equals(material);
    }

    @Override
    public double separationDepthSi(JetSettings jet, Material material, double feedMPerS) {
        Objects.requireNonNull(jet, "jet");
        Objects.requireNonNull(material, "material");
        if (!isOfLayers(material)) {
            return model.separationDepthSi(jet, material, feedMPerS);
        }
        double used = 0;
        for (Workpiece layer : workpiece.layers()) {
            used += layer.thicknessSi() / model.separationDepthSi(jet, layer.material(), feedMPerS);
        }
        return workpiece.thicknessSi() / used;
    }

    @Override
    public double separationFeedSi(JetSettings jet, Material material, double depthM) {
        Objects.requireNonNull(jet, "jet");
        Objects.requireNonNull(material, "material");
        return isOfLayers(material)
                ? LogRoot.ofDecreasing(feed -> separationDepthSi(jet, material, feed), depthM, GUESS_M_PER_S)
                : model.separationFeedSi(jet, material, depthM);
    }

    @Override
    public double feedSi(JetSettings jet, Material material, double thicknessM, double index) {
        return isOfLayers(material)
                ? separationFeedSi(jet, material, Settings.index(index) * thicknessM)
                : model.feedSi(jet, material, thicknessM, index);
    }

    @Override
    public double indexSi(JetSettings jet, Material material, double thicknessM, double feedMPerS) {
        return isOfLayers(material)
                ? separationDepthSi(jet, material, feedMPerS) / thicknessM
                : model.indexSi(jet, material, thicknessM, feedMPerS);
    }

    /** Mean of the layers', weighted by their shares of the machinability, as if fully correlated. */
    @Override
    public double relativeUncertainty(Material material) {
        if (!isOfLayers(material)) {
            return model.relativeUncertainty(material);
        }
        double shares = 0;
        double sum = 0;
        for (Workpiece layer : workpiece.layers()) {
            double share = layer.thicknessSi() / layer.material().machinabilitySi();
            shares += share;
            sum += share * model.relativeUncertainty(layer.material());
        }
        return sum / shares;
    }

    @Override
    public List<Caution> cautions(JetSettings jet, Material material, double depthM, double feedMPerS) {
        if (!isOfLayers(material)) {
            return model.cautions(jet, material, depthM, feedMPerS);
        }
        List<Caution> all = new ArrayList<>();
        for (Workpiece layer : workpiece.layers().stream().distinct().toList()) {
            double depthOfLayer = depthM * layer.thicknessSi() / workpiece.thicknessSi();
            for (Caution caution : model.cautions(jet, layer.material(), depthOfLayer, feedMPerS)) {
                if (!all.contains(caution)) {
                    all.add(caution);
                }
            }
        }
        return List.copyOf(all);
    }
}
