package dev.waterjet.feed;

import dev.waterjet.material.Material;
import dev.waterjet.measure.WaterjetException;

/** A model lacks what it must know of a material. */
public final class UnsuitedMaterialException extends WaterjetException {

    private static final long serialVersionUID = 1L;

    private final String material;

    UnsuitedMaterialException(FeedModel model, Material material, String lack) {
        super("the model \"" + model.name() + "\" cannot answer for " + material.name() + ": " + lack);
        this.material = material.id();
    }

    /**
     * Id of the material.
     *
     * @return the id
     */
    public String material() {
        return material;
    }
}
