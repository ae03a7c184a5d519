package dev.waterjet.examples;

import dev.waterjet.material.Material;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Units;
import java.util.OptionalDouble;
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
                .words("class")
                .words("aliases")
                .number("machinability", 4)
                .number("relative uncertainty", 2)
                .words("evidence")
                .column("density", Kind.DENSITY, Units.KILOGRAM_PER_CUBIC_METRE, 4)
                .note("A material with a higher machinability number is cut faster. Name a material by its id, an"
                        + " alias or a part that fits no other.")
                .note("\"assumed\": by a rule for the class of materials, with the uncertainty stated; make test"
                        + " cuts.");
        for (Material material : materials().all()) {
            table.row(
                    material.id(),
                    material.name(),
                    material.group(),
                    String.join(";", material.aliases()),
                    material.machinabilitySi(),
                    material.relativeUncertainty(),
                    material.evidence().grade().label(),
                    material.density()
                            .map(Kind.DENSITY::si)
                            .map(OptionalDouble::of)
                            .orElseGet(OptionalDouble::empty));
        }
        return table;
    }
}
