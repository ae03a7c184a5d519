package dev.waterjet.embedding;

import static dev.waterjet.measure.Measures.celsius;
import static dev.waterjet.measure.Measures.degrees;
import static dev.waterjet.measure.Measures.gramsPerMinute;
import static dev.waterjet.measure.Measures.litresPerMinute;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.metres;
import static dev.waterjet.measure.Measures.metresPerSecond;
import static dev.waterjet.measure.Measures.metresPerSquareSecond;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.millimetresPerMinute;
import static dev.waterjet.measure.Measures.seconds;

import dev.waterjet.calibrate.ParticleSpeedMeasurement;
import dev.waterjet.calibrate.PlainWaterCut;
import dev.waterjet.circuit.Circuit;
import dev.waterjet.circuit.DirectDrive;
import dev.waterjet.circuit.PumpDrive;
import dev.waterjet.circuit.ValveEvent;
import dev.waterjet.cost.CostItem;
import dev.waterjet.cost.CuttingCost;
import dev.waterjet.cost.Prices;
import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import dev.waterjet.evidence.ValidityRange;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.feed.PlainWaterFeed;
import dev.waterjet.hydraulics.Attenuator;
import dev.waterjet.hydraulics.Compression;
import dev.waterjet.hydraulics.DirectDrivePump;
import dev.waterjet.hydraulics.Intensifier;
import dev.waterjet.hydraulics.IsentropicJet;
import dev.waterjet.hydraulics.JetContraction;
import dev.waterjet.hydraulics.OperatingPoint;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.hydraulics.OrificeWear;
import dev.waterjet.hydraulics.PressureCycles;
import dev.waterjet.hydraulics.PumpSetting;
import dev.waterjet.hydraulics.SupplyLine;
import dev.waterjet.jet.Abrasive;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.CuttingHead;
import dev.waterjet.jet.FocusingTube;
import dev.waterjet.jet.Mesh;
import dev.waterjet.jet.MixingEfficiency;
import dev.waterjet.jet.MixingModel;
import dev.waterjet.jet.PlainJet;
import dev.waterjet.jet.TubeMixing;
import dev.waterjet.kerf.HeadTilt;
import dev.waterjet.kerf.Kerf;
import dev.waterjet.kerf.KerfModel;
import dev.waterjet.kerf.MeasuringPlane;
import dev.waterjet.kerf.MinimumFeatures;
import dev.waterjet.kerf.OffsetDrift;
import dev.waterjet.kerf.TaperCompensation;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.Units;
import dev.waterjet.motion.FeedPlanner;
import dev.waterjet.motion.MachineLimits;
import dev.waterjet.motion.QualityFeeds;
import dev.waterjet.motion.TiltingHead;
import dev.waterjet.part.Contour;
import dev.waterjet.part.ContourConditioner;
import dev.waterjet.part.Part;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import dev.waterjet.program.PartProgram;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import dev.waterjet.quality.Iso9013;
import dev.waterjet.quality.QualityIndexTable;
import dev.waterjet.quality.QualityScale;
import dev.waterjet.surface.CutSurface;
import dev.waterjet.surface.FastestFeed;
import dev.waterjet.surface.MeasuredSurface;
import dev.waterjet.surface.SurfaceModel;
import dev.waterjet.toolpath.CuttingRules;
import dev.waterjet.toolpath.KerfOffset;
import dev.waterjet.toolpath.Lead;
import dev.waterjet.toolpath.LeadPlacer;
import dev.waterjet.toolpath.OffsetResult;
import dev.waterjet.vessel.Autofrettage;
import dev.waterjet.vessel.CrackLeak;
import dev.waterjet.vessel.Ends;
import dev.waterjet.vessel.StoredEnergy;
import dev.waterjet.vessel.ThickTube;
import dev.waterjet.vessel.YieldCriterion;
import dev.waterjet.water.Saturation;
import dev.waterjet.water.Water;
import java.util.ArrayList;
import java.util.List;

/** One instance or more of every public type that a caller may want to store or send. */
@SuppressWarnings("StringConcatToTextBlock")
final class Samples {

    static final CuttingHead HEAD =
            CuttingHead.of(Orifice.sapphire(millimetres(0.25)), FocusingTube.of(millimetres(0.76), millimetres(76)));

    static final AbrasiveJet JET = HEAD.jet(megapascals(380), Abrasive.garnet(Mesh.of(80)), gramsPerMinute(300));

    static final Workpiece PLATE = Workpiece.of(Materials.standard().get("graphite"), millimetres(6));

    private Samples() {}

    static List<Described> all() {
        List<Described> all = new ArrayList<>();
        ofEvidence(all);
        ofWater(all);
        ofJet(all);
        ofFeed(all);
        ofPath(all);
        ofKerf(all);
        JobSamples.addTo(all);
        FitSamples.addTo(all);
        return all;
    }

    private static void ofEvidence(List<Described> all) {
        Source source = Source.of("Handbook of the Hollow Ridge workshop");
        ValidityRange<?> range = ValidityRange.of("pressure", Kind.PRESSURE, megapascals(100), megapascals(400));
        all.add(source);
        all.add(source.at("page 7"));
        all.add(range);
        all.add(Evidence.of(EvidenceGrade.FROM_MEMORY, source)
                .withNote("a note")
                .withRanges(range));
        all.add(Caution.danger(Message.of("pressure", "a \"quoted\" text with a line\nend")));
        all.add(Estimate.of(Kind.TEMPERATURE, 293.15, 0.5));
        all.add(Estimate.withinFactor(
                Kind.SPEED, 0.01, 0.15, List.of(Caution.notice(Message.of("thin", "thin sheet")))));
        all.add(QuantityArray.ofSi(Kind.SPECIFIC_HEAT, 4186, 4184.1));
        all.add(Message.of("thin-sheet", "the sheet is {thickness} thick, 1 of {count}")
                .with("thickness", Kind.LENGTH, 5e-4, Units.MILLIMETRE)
                .with("count", 12));
    }

    private static void ofWater(List<Described> all) {
        all.add(Water.metastable());
        all.add(Water.stable().at(megapascals(400), celsius(20)));
        all.add(Saturation.at(celsius(100)));
        all.add(IsentropicJet.of(megapascals(400), celsius(20)));
        ofSupply(all);
    }

    private static void ofSupply(List<Described> all) {
        SupplyLine.Section section = SupplyLine.Section.ofBore(millimetres(5)).withLength(metres(8));
        SupplyLine line = SupplyLine.of(section);
        PumpSetting pump = PumpSetting.of(megapascals(380), litresPerMinute(3.8));
        all.add(section);
        all.add(line);
        all.add(pump);
        all.add(OperatingPoint.of(pump, line, celsius(20), List.of(HEAD.orifice())));
        all.add(OrificeWear.measured(HEAD.orifice(), megapascals(380), litresPerMinute(2), celsius(20)));
        all.add(TubeMixing.of(JET));
        all.add(MixingModel.standard().withCrowding(0.4));
        all.add(ParticleSpeedMeasurement.of(JET, metresPerSecond(400)));
        all.add(PlainWaterFeed.of(
                PLATE.material(), JET.water(), millimetres(5), millimetres(20), metresPerSecond(0.1)));
        all.add(PlainWaterCut.of(JET.water(), millimetres(5), millimetres(20), metresPerSecond(0.1)));
        all.add(PlainJet.of(JET.water()));
        all.add(JET.water().estimates());
        all.add(PressureCycles.of(Kind.FREQUENCY.of(0.01), megapascals(0.1), megapascals(380)));
        all.add(JetContraction.of(JET.water(), 0.98));
        addCircuits(all);
        ThickTube tube = ThickTube.of(millimetres(50), millimetres(100));
        all.add(tube);
        all.add(tube.stressAtBore(megapascals(380), Ends.CLOSED));
        all.add(tube.limits(YieldCriterion.MISES, Ends.OPEN, megapascals(900)));
        all.add(Autofrettage.toRadius(tube, megapascals(900), millimetres(35)));
        all.add(StoredEnergy.of(
                Water.stable().at(megapascals(380), celsius(20)), Kind.VOLUME.of(1e-3), tube, Ends.CLOSED));
        all.add(CrackLeak.of(millimetres(5), megapascals(200), megapascals(200_000)));
        all.add(Attenuator.of(Kind.VOLUME.of(1e-3)).withDiameterRatio(2.5, megapascals(200_000), 0.29));
        all.add(Compression.of(Water.stable().at(megapascals(0.1), celsius(20)), megapascals(380), 0.9));
        all.add(Intensifier.of(20, Kind.VOLUME.of(2e-4)));
        all.add(DirectDrivePump.of(3, Kind.VOLUME.of(5e-6), Kind.FREQUENCY.of(10)));
    }

    private static void addCircuits(List<Described> all) {
        DirectDrive drive = PumpDrive.of(DirectDrivePump.of(3, Kind.VOLUME.of(2e-6), Kind.FREQUENCY.of(10)));
        ValveEvent closing = ValveEvent.closing(seconds(0.01), seconds(0.005));
        Circuit circuit = Circuit.around(megapascals(380), Water.stable().at(megapascals(0.1), celsius(20)))
                .vessel("attenuator", Attenuator.of(Kind.VOLUME.of(1e-3)))
                .pump("attenuator", drive)
                .line(
                        "attenuator",
                        "head",
                        SupplyLine.Section.ofBore(millimetres(4.8)).withLength(Kind.LENGTH.of(5)))
                .head("head", HEAD.orifice(), closing)
                .reliefValve("attenuator", HEAD.orifice(), megapascals(450), seconds(0.005))
                .build();
        all.add(drive);
        all.add(PumpDrive.of(Intensifier.of(20, Kind.VOLUME.of(1e-4)), megapascals(380), Kind.FREQUENCY.of(1)));
        all.add(closing);
        all.add(circuit);
        all.add(circuit.ripple());
        all.add(circuit.run(seconds(0.02), 10));
    }

    private static void ofJet(List<Described> all) {
        all.add(HEAD.orifice());
        all.add(JET.water());
        all.add(Mesh.fepa(80));
        all.add(JET.abrasive());
        all.add(HEAD.tube().withExitBore(millimetres(0.9)));
        all.add(MixingEfficiency.standard());
        all.add(HEAD);
        all.add(JET);
    }

    private static void ofFeed(List<Described> all) {
        all.add(PLATE.material());
        all.add(PLATE);
        all.add(QualityIndexTable.standard());
        all.add(QualityScale.parse("level,measure,above_thickness,to_thickness,constant,per_thickness\n"
                + "ridge-a,perpendicularity,0 mm,50 mm,0.04 mm,0.002\n"));
        all.add(Iso9013.forThickness(millimetres(6)));
        all.add(CutConditions.of(JET, PLATE, MachinabilityFeed.published()));
        all.add(MachinabilityFeed.published()
                .curve(JET, PLATE.material(), 3, QuantityArray.parse(Kind.LENGTH, "1 mm..20 mm")));
        all.add(CuttingCost.of(
                        Prices.of("crowns").with(CostItem.MACHINE, 90),
                        CutConditions.of(JET, PLATE, MachinabilityFeed.published()))
                .at(3));
    }

    private static void ofKerf(List<Described> all) {
        CutConditions cut = CutConditions.of(JET, PLATE, MachinabilityFeed.published());
        Kerf kerf = KerfModel.standard().kerf(cut, millimetresPerMinute(300));
        all.add(kerf);
        all.add(kerf.lag());
        all.add(TaperCompensation.forSquarePartSide(kerf));
        all.add(HeadTilt.ofSi(0.02, -0.05));
        all.add(MinimumFeatures.of(kerf));
        all.add(OffsetDrift.of(kerf, MeasuringPlane.EXIT, Kind.SPEED.of(3e-10)));
        all.add(kerf.model());
        all.add(kerf.model().lagModel());
        CutSurface surface = SurfaceModel.standard().surface(cut, millimetresPerMinute(300));
        all.add(SurfaceModel.standard());
        all.add(SurfaceModel.standard().roughnessModel());
        all.add(surface);
        all.add(surface.roughness());
        all.add(surface.quality());
        FastestFeed fastest = SurfaceModel.standard()
                .fastestFeed(cut, EdgeRequirement.defaults().withPerpendicularityRange(1));
        all.add(fastest);
        all.add(fastest.ranges().get(1));
        all.add(MeasuredSurface.ofThickness(millimetres(12)).withSmoothZone(millimetres(8)));
    }

    private static void ofPath(List<Described> all) {
        Contour window = Contour.rectangle(
                Point.millimetres(0, 0), Point.millimetres(30, 20), EdgeRequirement.of(CutQuality.MEDIUM));
        Part part =
                Part.of(window, Contour.circle(Point.millimetres(15, 10), millimetres(4), EdgeRequirement.defaults()));
        Lead lead = LeadPlacer.of(part, CuttingRules.of(millimetres(1), millimetres(6)))
                .at(0, millimetres(15));
        all.add(part);
        all.add(window);
        all.add(part.holes().get(0).edge(0));
        all.add(window.requirement(0));
        all.add(window.box());
        all.add(window.start());
        all.add(lead);
        all.add(lead.findings().get(0));
        all.add(lead.toolPath());
        all.add(ContourConditioner.defaults().condition(window));
        all.add(KerfOffset.of(millimetres(0.5)).apply(window, Side.RIGHT));
        all.add(CuttingRules.of(millimetres(1), millimetres(6)));
        all.add(PartProgram.parse("(waterjet: name bracket, quality fine, open)\nG21 G90\nM3\nG1 X10 F300\nM5\n")
                .cuts()
                .get(0));
        PartProgram program = PartProgram.parse("(waterjet: open)\nG21 G90\nM3\nG1 X10 F300\nM5\n");
        all.add(program);
        all.add(program.codes());
        all.addAll(PartProgram.parse("(waterjet: speed 3)\nG0 X1\nM3\nG3 I-1\nM5\n")
                .findings());
        all.add(ContourConditioner.defaults().condition(window));
        OffsetResult offset = KerfOffset.of(millimetres(0.4)).apply(window, Side.RIGHT);
        all.add(offset);
        all.add(offset.path());
        MachineLimits limits = MachineLimits.of(metresPerSecond(0.3), metresPerSquareSecond(1));
        QualityFeeds feeds = QualityFeeds.of(CutConditions.of(JET, PLATE, MachinabilityFeed.published()));
        all.add(limits);
        all.add(feeds);
        TiltingHead head = TiltingHead.of(degrees(8), Kind.ANGULAR_SPEED.of(1), Kind.ANGULAR_ACCELERATION.of(10));
        all.add(head);
        FeedPlanner planner = FeedPlanner.of(limits, CutConditions.of(JET, PLATE, MachinabilityFeed.published()));
        for (Side side : Side.values()) {
            all.add(planner.plan(window, side));
            all.add(planner.plan(window, side).block(0));
            all.addAll(planner.plan(window, side).slowZones(0.9));
            all.add(planner.withTiltingHead(head).plan(window, side).tilt().orElseThrow());
        }
    }
}
