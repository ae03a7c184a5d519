package dev.waterjet.docs.explorer;

import org.teavm.classlib.ResourceSupplier;
import org.teavm.classlib.ResourceSupplierContext;

/** Files of the library that the script carries: the catalogue of materials. */
public final class CatalogueFiles implements ResourceSupplier {

    /** Creates the supplier; the compiler to script does so. */
    public CatalogueFiles() {}

    @Override
    public String[] supplyResources(ResourceSupplierContext context) {
        return new String[] {"dev/waterjet/material/materials.csv"};
    }
}
