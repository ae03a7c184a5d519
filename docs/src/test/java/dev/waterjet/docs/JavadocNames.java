package dev.waterjet.docs;

import static dev.waterjet.measure.Measures.*;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.calibrate.ArcMeasurement;
import dev.waterjet.calibrate.CalibratedFeed;
import dev.waterjet.calibrate.Calibration;
import dev.waterjet.calibrate.KerfMeasurement;
import dev.waterjet.calibrate.TestCut;
import dev.waterjet.cost.CostItem;
import dev.waterjet.cost.PartWork;
import dev.waterjet.cost.Prices;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.hydraulics.DirectDrivePump;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.hydraulics.PumpSetting;
import dev.waterjet.jet.Abrasive;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.CuttingHead;
import dev.waterjet.jet.FocusingTube;
import dev.waterjet.jet.Mesh;
import dev.waterjet.kerf.KerfModel;
import dev.waterjet.kerf.LagModel;
import dev.waterjet.material.Material;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.motion.FeedPlan;
import dev.waterjet.motion.FeedPlanner;
import dev.waterjet.motion.MachineLimits;
import dev.waterjet.motion.TiltingHead;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Part;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import dev.waterjet.pierce.Pierce;
import dev.waterjet.pierce.PierceSelector;
import dev.waterjet.pierce.PierceSettings;
import dev.waterjet.placement.Location;
import dev.waterjet.placement.PartLocator;
import dev.waterjet.placement.ProbedPoint;
import dev.waterjet.plan.Setup;
import dev.waterjet.program.PartProgram;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import dev.waterjet.simulate.CutSimulator;
import dev.waterjet.toolpath.CuttingRules;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Speed;
import javax.measure.quantity.Time;

/** Names that the examples of the Javadoc suppose. An example that declares such a name itself hides the field. */
public abstract class JavadocNames {

    protected final Material titanium = Materials.standard().get("titanium");
    protected final Material steel = Materials.standard().get("mild-steel-a36");
    protected final Material stainless = Materials.standard().get("stainless-304");
    protected final Material granite = Materials.standard().get("granite");
    protected final Material material = steel;
    protected final Workpiece plate = Workpiece.of(titanium, millimetres(10));
    protected final Workpiece workpiece = plate;

    protected final Orifice.Jewel jewel = Orifice.Jewel.SAPPHIRE;
    protected final Orifice orifice = Orifice.sapphire(millimetres(0.33));
    protected final double boreM = 0.33e-3;
    protected final DirectDrivePump triplex = DirectDrivePump.of(3, Kind.VOLUME.of(2.4e-6), Kind.FREQUENCY.of(10));
    protected final CuttingHead head = CuttingHead.of(orifice, FocusingTube.of(millimetres(1.02), millimetres(102)));
    protected final AbrasiveJet jet = head.jet(megapascals(380), Abrasive.garnet(Mesh.of(80)), gramsPerMinute(450));
    protected final QuantityArray<Pressure> pressures =
            QuantityArray.parse(Kind.PRESSURE, "200 MPa..400 MPa step 50 MPa");

    protected final MachinabilityFeed model = MachinabilityFeed.published();
    protected final CutConditions cut = CutConditions.of(jet, plate, model);
    protected final Quantity<Speed> feed = millimetresPerMinute(120);

    protected final String csv = """
        label,test,thickness_mm,feed_mm_per_min,failed_feed_mm_per_min,pressure_MPa,orifice_mm,tube_mm,abrasive_flow_g_per_min
        A1,interval,12,560,620,360,0.30,0.90,400
        A2,interval,12,620,680,360,0.30,0.90,400
        A3,interval,20,310,340,360,0.30,0.90,400
        """;
    protected final List<TestCut> threeCuts = TestCut.parse(csv);
    protected final List<TestCut> steelCuts = threeCuts;
    protected final List<TestCut> titaniumCuts = threeCuts;
    protected final List<TestCut> cuts = threeCuts.stream()
            .map(each -> each.withAttribute("material", granite.id()))
            .toList();
    protected final CalibratedFeed own =
            Calibration.ofMachinability(steel, model).fit(threeCuts);
    protected final List<TestCut> separations = TestCut.parse("""
        label,test,thickness_mm,feed_mm_per_min,pressure_MPa,orifice_mm,tube_mm,abrasive_flow_g_per_min
        A1,separation,6,1214,360,0.30,0.90,400
        A2,separation,12,602,360,0.30,0.90,400
        A3,separation,20,347,360,0.30,0.90,400
        D1,separation,12,397,280,0.30,0.90,400
        D2,separation,6,766,280,0.30,0.90,400
        E1,separation,12,439,320,0.30,0.90,400
        """);
    protected final CalibratedFeed machinability =
            Calibration.ofMachinability(steel, model).fit(separations);
    protected final CalibratedFeed specificEnergy =
            Calibration.ofSpecificEnergy(steel).fit(separations);
    protected final ArcMeasurement second = arc(8, 0.27);
    protected final ArcMeasurement third = arc(12, 0.18);
    protected final KerfMeasurement fast = KerfMeasurement.atFeed(cut, millimetresPerMinute(150))
            .withEntryWidth(millimetres(1.08))
            .withExitWidth(millimetres(0.85));
    protected final List<KerfMeasurement> measurements = List.of(
            fast,
            KerfMeasurement.atFeed(cut, millimetresPerMinute(60))
                    .withEntryWidth(millimetres(1.12))
                    .withExitWidth(millimetres(1.0)));

    protected final Contour contour = Contour.rectangle(
                    Point.millimetres(0, 0), Point.millimetres(80, 50), EdgeRequirement.of(CutQuality.MEDIUM))
            .named("edge");
    protected final Part part = Part.of(
            contour,
            Contour.circle(Point.millimetres(40, 25), millimetres(12), EdgeRequirement.defaults())
                    .named("bore"));
    protected final Contour path = Contour.from(Point.millimetres(0, 0))
            .lineTo(Point.millimetres(20, 0))
            .arcTo(Point.millimetres(25, 5), Point.millimetres(20, 5), Side.LEFT)
            .lineTo(Point.millimetres(25, 30))
            .open();
    protected final List<Part> placed = List.of(part);
    protected final Contour sheet =
            Contour.rectangle(Point.millimetres(-20, -20), Point.millimetres(300, 200), EdgeRequirement.defaults());
    protected final Quantity<Length> width = millimetres(80);
    protected final Quantity<Length> height = millimetres(50);
    protected final Quantity<Length> kerfWidth = millimetres(1.1);
    protected final double widthM = 0.9e-3;
    protected final double kerfM = 1.1e-3;
    protected final CuttingRules rules = CuttingRules.of(kerfWidth, millimetres(12));
    protected final List<ProbedPoint> points = List.of(
            ProbedPoint.hole(Point.millimetres(0, 0), Point.millimetres(412.31, 205.02)),
            ProbedPoint.hole(Point.millimetres(80, 0), Point.millimetres(492.28, 206.71)));
    protected final Location location = PartLocator.locate(points);
    protected final Estimate<Length> offsetError = Estimate.of(Kind.LENGTH, 0.0, 20e-6);

    protected final MachineLimits machine = MachineLimits.of(metresPerSecond(0.3), metresPerSquareSecond(0.5));
    protected final FeedPlanner planner = FeedPlanner.of(machine, cut);
    protected final FeedPlan plan = planner.withTiltingHead(
                    TiltingHead.of(degrees(8), Kind.ANGULAR_SPEED.of(1), Kind.ANGULAR_ACCELERATION.of(10)))
            .plan(contour, Side.LEFT);
    protected final CutSimulator simulator = CutSimulator.of(cut, KerfModel.standard(), LagModel.standard());
    protected final Prices prices =
            Prices.of("cost units").with(CostItem.MACHINE, 90, 0.1).with(CostItem.ABRASIVE, 0.45);
    protected final Setup setup = Setup.of(head, PumpSetting.of(megapascals(380), litresPerMinute(3.5)), machine);
    protected final Pierce pierce = PierceSelector.of(PierceSettings.defaults()).select(cut);
    protected final Estimate<Time> cuttingTime = Estimate.of(Kind.TIME, 120, 12);
    protected final PartWork work =
            PartWork.of(cuttingTime).withPierces(9, pierce).withIdle(seconds(40));

    protected final String text = "G90 G71\nG0 X0 Y0\nM3\nG1 X40 F120\nG1 Y30\nG1 X0\nG1 Y0\nM5\nM30\n";
    protected final PartProgram program = PartProgram.parse(text);

    /** Misra1a of the NIST Statistical Reference Datasets (www.itl.nist.gov/div898/strd), from memory: any data of this form do. */
    protected final double[] x = {
        77.6, 114.9, 141.1, 190.8, 239.9, 289, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760
    };

    protected final double[] y = {
        10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.4, 75.47, 81.78
    };
    protected double sum;
    protected final StringBuilder out = new StringBuilder();
    protected final Report report = new Report();
    protected final Report post = report;

    /** Receiver of what an example hands on. */
    public static final class Report {
        private final List<Object> rows = new ArrayList<>();

        public void add(Object... row) {
            rows.add(List.of(row));
        }

        public void line(Point end, Optional<Point> centre, Quantity<Speed> feed, Object purpose) {
            add(end, centre, feed, purpose);
        }
    }

    /** Runs the example. */
    public abstract void run() throws Exception;

    private static ArcMeasurement arc(double radiusMm, double shiftMm) {
        return ArcMeasurement.of(millimetres(25), millimetres(75), millimetres(radiusMm))
                .withShift(millimetres(shiftMm));
    }

    protected void log(Object... row) {
        report.add(row);
    }

    /** Holds a result against the text that states it: a number to its last figure, a quantity with its unit. */
    protected static void states(Object result, String text) {
        if (result instanceof String printed) {
            assertThat(printed).isEqualTo(text);
            return;
        }
        String number = text.split(" ", 2)[0];
        BigDecimal stated = new BigDecimal(number);
        BigDecimal half = new BigDecimal(BigInteger.valueOf(5), stated.scale() + 1);
        if (result instanceof Quantity<?> quantity) {
            Kind<?> kind = Kind.all().stream()
                    .filter(each -> each.siUnit().equals(quantity.getUnit().getSystemUnit()))
                    .findFirst()
                    .orElseThrow();
            String unit = text.substring(number.length());
            double si = si(kind, stated + unit);
            assertThat(quantity.toSystemUnit().getValue().doubleValue())
                    .as(text)
                    .isCloseTo(si, within(si(kind, stated.add(half) + unit) - si));
        } else {
            assertThat(((Number) result).doubleValue())
                    .as(text)
                    .isCloseTo(stated.doubleValue(), within(half.doubleValue()));
        }
    }

    private static double si(Kind<?> kind, String text) {
        return QuantityText.parse(kind, text).toSystemUnit().getValue().doubleValue();
    }
}
