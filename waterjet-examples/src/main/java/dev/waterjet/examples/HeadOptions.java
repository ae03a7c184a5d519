package dev.waterjet.examples;

import static dev.waterjet.measure.Measures.gramsPerMinute;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.millimetres;

import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.hydraulics.WaterJet;
import dev.waterjet.jet.Abrasive;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.CuttingHead;
import dev.waterjet.jet.FocusingTube;
import dev.waterjet.jet.Mesh;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.MassFlow;
import java.util.Optional;
import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import javax.measure.quantity.Pressure;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Options of the cutting head; mixed into every program that needs a jet. */
final class HeadOptions {

    @Option(
            names = "--pressure",
            converter = Typed.Pressure.class,
            paramLabel = "<pressure>",
            description = "Gauge pressure at the orifice. Default: 380 MPa.")
    private Quantity<Pressure> pressure = megapascals(380);

    @Option(
            names = "--orifice",
            converter = Typed.Length.class,
            paramLabel = "<bore>",
            description = "Bore of the orifice. Default: 0.33 mm.")
    private Quantity<Length> orificeBore = millimetres(0.33);

    @Option(
            names = "--discharge-coefficient",
            converter = Coefficient.class,
            paramLabel = "<ratio>",
            description = "Discharge coefficient of the orifice, relative to the incompressible speed.")
    private Optional<Quantity<Dimensionless>> dischargeCoefficient = Optional.empty();

    @Option(
            names = "--tube",
            converter = Typed.Length.class,
            paramLabel = "<bore>",
            description = "Bore of the focusing tube. Default: 1.02 mm.")
    private Quantity<Length> tubeBore = millimetres(1.02);

    @Option(
            names = "--tube-length",
            converter = Typed.Length.class,
            paramLabel = "<length>",
            description = "Length of the focusing tube. Default: 102 mm.")
    private Quantity<Length> tubeLength = millimetres(102);

    @Option(
            names = "--stand-off",
            converter = Typed.Length.class,
            paramLabel = "<distance>",
            description = "Stand-off distance, from the focusing tube to the workpiece. Default: 2 mm, or 4"
                    + " bores of a tube below 0.5 mm.")
    private Optional<Quantity<Length>> standOff = Optional.empty();

    @Option(
            names = "--mesh",
            converter = Typed.Grain.class,
            paramLabel = "<mesh>",
            description =
                    "Mesh size of the garnet: a sieve number such as 80, or a FEPA designation such as F80. Default:"
                            + " 80.")
    private Mesh mesh = Mesh.of(80);

    @Option(
            names = "--abrasive-flow",
            converter = Typed.MassFlow.class,
            paramLabel = "<flow>",
            description = "Abrasive flow rate. Default: 450 g/min.")
    private Quantity<MassFlow> abrasiveFlow = gramsPerMinute(450);

    /** A discharge coefficient. */
    static final class Coefficient implements ITypeConverter<Quantity<Dimensionless>> {
        @Override
        public Quantity<Dimensionless> convert(String text) {
            return Kind.RATIO.parse(text);
        }
    }

    @Spec(Spec.Target.MIXEE)
    private CommandSpec program;

    /** Whether a head is given, or any part of one. */
    boolean isHeadGiven() {
        return Stream.of("--orifice", "--discharge-coefficient", "--tube", "--tube-length", "--abrasive-flow")
                        .anyMatch(program.commandLine().getParseResult()::hasMatchedOption)
                || ShopDefaults.of(program.commandLine()).hasHead();
    }

    /** Whether a mesh is given. */
    boolean isMeshGiven() {
        return program.commandLine().getParseResult().hasMatchedOption("--mesh");
    }

    /** A head of the inventory, at the requested stand-off. */
    AbrasiveJet atStandOff(AbrasiveJet chosen) {
        CuttingHead head = chosen.head();
        CuttingHead placed = head.withStandOff(standOff.orElseGet(
                () -> CuttingHead.of(head.orifice(), head.tube()).standOff()));
        return placed.jet(pressure, chosen.abrasive(), chosen.abrasiveFlow());
    }

    Quantity<Pressure> pressure() {
        return pressure;
    }

    Abrasive abrasive() {
        return Abrasive.garnet(mesh);
    }

    Orifice orifice() {
        Orifice orifice = Orifice.sapphire(orificeBore);
        return dischargeCoefficient
                .map(Kind.RATIO::si)
                .map(orifice::withDischargeCoefficient)
                .orElse(orifice);
    }

    WaterJet waterJet() {
        return WaterJet.of(orifice(), pressure);
    }

    CuttingHead head() {
        CuttingHead head = CuttingHead.of(orifice(), FocusingTube.of(tubeBore, tubeLength));
        return standOff.map(head::withStandOff).orElse(head);
    }

    AbrasiveJet jet() {
        return head().jet(pressure, abrasive(), abrasiveFlow);
    }
}
