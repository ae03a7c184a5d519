package dev.waterjet.docs.explorer;

import dev.waterjet.calibrate.CalibratedFeed;
import dev.waterjet.calibrate.Calibration;
import dev.waterjet.calibrate.NextCut;
import dev.waterjet.calibrate.TestCut;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.jet.Abrasive;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.CuttingHead;
import dev.waterjet.jet.FocusingTube;
import dev.waterjet.jet.Mesh;
import dev.waterjet.kerf.CutFront;
import dev.waterjet.kerf.Kerf;
import dev.waterjet.kerf.KerfModel;
import dev.waterjet.kerf.LagModel;
import dev.waterjet.material.Material;
import dev.waterjet.material.MaterialClass;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Measures;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.WaterjetException;
import dev.waterjet.quality.CutQuality;
import java.util.List;
import java.util.stream.Collectors;
import javax.measure.quantity.Speed;
import org.teavm.jso.JSExport;

/** Computation of the explorer page: the library behind three functions of texts, compiled to script without a change. */
public final class Explorer {

    private static final int STEPS = 60;

    private Explorer() {}

    /**
     * Names the materials of the catalogue.
     *
     * @return JSON with {@code ids} and {@code names}
     */
    @JSExport
    public static String materials() {
        List<Material> all = List.copyOf(Materials.standard().all());
        return new Json()
                .put("ids", all.stream().map(Material::id).collect(Collectors.toList()))
                .put("names", all.stream().map(Material::name).collect(Collectors.toList()))
                .toString();
    }

    /**
     * Computes a cut.
     *
     * @param pressure pressure with its unit, such as {@code "400 MPa"}
     * @param orifice bore of the orifice
     * @param tube bore of the focusing tube
     * @param flow abrasive flow rate
     * @param thickness thickness of the workpiece
     * @param material name of the material
     * @param quality constant of the cut quality
     * @return JSON in SI units with the texts for people, or {@code error}
     */
    @JSExport
    public static String cut(
            String pressure,
            String orifice,
            String tube,
            String flow,
            String thickness,
            String material,
            String quality) {
        try {
            AbrasiveJet jet = CuttingHead.of(
                            Orifice.sapphire(QuantityText.parse(Kind.LENGTH, orifice)),
                            FocusingTube.of(QuantityText.parse(Kind.LENGTH, tube), Measures.millimetres(76)))
                    .jet(
                            QuantityText.parse(Kind.PRESSURE, pressure),
                            Abrasive.garnet(Mesh.of(80)),
                            QuantityText.parse(Kind.MASS_FLOW, flow));
            Workpiece workpiece =
                    Workpiece.of(Materials.standard().get(material), QuantityText.parse(Kind.LENGTH, thickness));
            return answer(
                    CutConditions.of(jet, workpiece, MachinabilityFeed.published()), jet, CutQuality.valueOf(quality));
        } catch (WaterjetException | IllegalArgumentException e) {
            return new Json().put("error", String.valueOf(e.getMessage())).toString();
        }
    }

    private static String answer(CutConditions cut, AbrasiveJet jet, CutQuality quality) {
        Estimate<Speed> feed = cut.feed(quality);
        Kerf kerf = KerfModel.standard().kerf(cut, feed.value());
        double thickness = cut.thicknessSi();
        CutFront front = CutFront.of(LagModel.standard(), cut);
        Json json = new Json()
                .put("jet_speed", jet.water().speedSi())
                .put("water_flow", jet.water().volumeFlowSi())
                .put("power", Kind.POWER.si(jet.water().ratedHydraulicPower()))
                .put("reaction_force", Kind.FORCE.si(jet.water().reactionForce()))
                .put("loading_ratio", Kind.RATIO.si(jet.loadingRatio()))
                .put("particle_speed", jet.particleSpeed().si())
                .put("feed", feed.si())
                .put("feed_lower", Kind.SPEED.si(feed.lower(0.95)))
                .put("feed_upper", Kind.SPEED.si(feed.upper(0.95)))
                .put("thickness", thickness)
                .put("entry_width", kerf.entryWidth().si())
                .put("exit_width", kerf.exitWidth().si())
                .put("taper", kerf.taperPerSide().si())
                .put("exit_lag", front.exitLagSi(feed.si()))
                .put("regime", kerf.regime().label());
        double far = 2 * thickness;
        json.put("curve", far / 10, far, STEPS, h -> at(cut, quality, h).si());
        json.put(
                "lower",
                far / 10,
                far,
                STEPS,
                h -> Kind.SPEED.si(at(cut, quality, h).lower(0.95)));
        json.put(
                "upper",
                far / 10,
                far,
                STEPS,
                h -> Kind.SPEED.si(at(cut, quality, h).upper(0.95)));
        json.put("wall", 0, thickness, STEPS, kerf::halfWidthSi);
        json.put("front", 0, thickness, STEPS, z -> z == 0 ? 0 : front.lagSi(feed.si(), z));
        return json.put("cautions", List.copyOf(feed.cautions())).toString();
    }

    private static Estimate<Speed> at(CutConditions cut, CutQuality quality, double thicknessM) {
        return cut.feedModel().feed(cut.jet(), cut.workpiece().withThickness(Kind.LENGTH.of(thicknessM)), quality);
    }

    /** The next cut of most use for the settings of the first one: at these, or at three quarters of their pressure or flow. */
    private static NextCut next(CalibratedFeed own, List<TestCut> cuts) {
        TestCut first = cuts.get(0);
        AbrasiveJet jet = first.jet();
        List<AbrasiveJet> candidates = List.of(
                jet,
                jet.withPressure(Kind.PRESSURE.of(0.75 * jet.pressureSi())),
                jet.withAbrasiveFlow(Kind.MASS_FLOW.of(0.75 * jet.abrasiveFlowSi())));
        return NextCut.rank(own, jet, first.thickness(), candidates).get(0);
    }

    /**
     * Fits the machinability number to test cuts.
     *
     * @param csv test cuts as the program {@code fit} reads them
     * @return JSON with the machinability number and its 95 % interval, or {@code error}
     */
    @JSExport
    public static String fit(String csv) {
        try {
            List<TestCut> cuts = TestCut.parse(csv);
            CalibratedFeed own = Calibration.ofMachinability(
                            Material.of("own", 100, 0.3, MaterialClass.DUCTILE), MachinabilityFeed.published())
                    .fit(cuts);
            NextCut next = next(own, cuts);
            return new Json()
                    .put("next_pressure", next.jet().pressureSi())
                    .put("next_feed", Kind.SPEED.si(next.trialFeed()))
                    .put("next_narrowing", next.narrowing())
                    .put("cuts", cuts.size())
                    .put("machinability", own.fit().value("machinability"))
                    .put("lower", own.fit().lower("machinability", 0.95))
                    .put("upper", own.fit().upper("machinability", 0.95))
                    .put("scatter", own.scatter())
                    .put("method", own.fit().method().label())
                    .put("remarks", List.copyOf(own.remarks()))
                    .toString();
        } catch (WaterjetException | IllegalArgumentException e) {
            return new Json().put("error", String.valueOf(e.getMessage())).toString();
        }
    }
}
