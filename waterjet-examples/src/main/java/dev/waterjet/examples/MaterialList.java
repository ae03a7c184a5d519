package dev.waterjet.examples;

import dev.waterjet.material.Material;
import dev.waterjet.material.Materials;
import picocli.CommandLine.Command;

/** The catalogue of materials. */
@Command(name = "materials", description = "Materials that the library knows, and how well it knows them.")
final class MaterialList extends Program {

    @Override
    protected Table table() {
        Table table = Table.of("Materials of the standard catalogue")
                .words("material")
                .words("name")
                .number("machinability", 4)
                .number("relative uncertainty", 2)
                .words("evidence")
                .note(
                        "A higher machinability is cut faster. Name a material by its id or a part of it that fits no other.");
        for (Material material : Materials.standard().all()) {
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
