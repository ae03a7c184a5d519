package dev.waterjet.examples;

import dev.waterjet.material.Material;
import picocli.CommandLine.Command;

/** Program that lists the materials of the standard catalogue. */
@Command(
        name = "materials",
        description = "List the materials of the standard catalogue and of the shop file, with uncertainty and evidence"
                + " grade.")
final class MaterialList extends Program {

    @Override
    protected Table table() {
        Table table = Table.of("Materials of the standard catalogue")
                .words("material")
                .words("name")
                .number("machinability", 4)
                .number("relative uncertainty", 2)
                .words("evidence")
                .note("A material with a higher machinability number is cut faster. Name a material by its id or by"
                        + " a part that fits no other.");
        for (Material material : materials().all()) {
            table.row(
                    material.id(),
                    material.name(),
                    material.machinabilitySi(),
                    material.relativeUncertainty(),
                    material.evidence().grade().label());
        }
        return table;
    }
}
