package dev.waterjet.motion;

import dev.waterjet.ValueContract;
import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.Kind;
import dev.waterjet.part.Box;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Edge;
import dev.waterjet.part.Finding;
import dev.waterjet.part.GeometryException;
import dev.waterjet.part.Part;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import dev.waterjet.sheet.SheetLayout;
import dev.waterjet.sheet.Slats;
import dev.waterjet.toolpath.CuttingRules;
import dev.waterjet.toolpath.HoldingTabs;
import dev.waterjet.toolpath.Lead;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import static dev.waterjet.measure.Measures.degrees;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.metresPerSecond;
import static dev.waterjet.measure.Measures.metresPerSquareSecond;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.millimetresPerMinute;
import static dev.waterjet.measure.Measures.newtons;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

class PathValuesTest {

    private static final EdgeRequirement MEDIUM = EdgeRequirement.of(CutQuality.MEDIUM);
    private static final CuttingRules RULES = CuttingRules.of(millimetres(0.8), millimetres(10));

    private static Contour rectangle(double width, double height) {
        return Contour.rectangle(Point.millimetres(0, 0), Point.millimetres(width, height), MEDIUM);
    }

    private static FeedPlan plan(Contour contour, double feedMmPerMin) {
        return FeedPlanner.of(
                        MachineLimits.of(metresPerSecond(0.3), metresPerSquareSecond(1)),
                        QualityFeeds.same(millimetresPerMinute(feedMmPerMin)),
                        feed -> 0.03 * feed)
                .plan(contour, Side.LEFT);
    }

    @Test
    void pointsAndBoxes() {
        ValueContract.of(() -> Point.of(millimetres(3), millimetres(-4)))
                .tells("x", Point::x, millimetres(3))
                .tells("y", Point::y, millimetres(-4))
                .tells("distance", point -> point.distance(Point.ofSi(0, 0)), millimetres(5))
                .differs("x", Point.millimetres(3.5, -4))
                .differs("y", Point.millimetres(3, 4))
                .says("(3 mm, -4 mm)")
                .check();
        ValueContract.of(() -> Box.ofSi(0.01, 0.02, 0.04, 0.07))
                .tells("lowest", Box::minimum, Point.millimetres(10, 20))
                .tells("highest", Box::maximum, Point.millimetres(40, 70))
                .tells("width", Box::width, millimetres(30))
                .tells("height", Box::height, millimetres(50))
                .differs("lowest", Box.ofSi(0.01, 0.01, 0.04, 0.07))
                .differs("highest", Box.ofSi(0.01, 0.02, 0.04, 0.06))
                .says("(10 mm, 20 mm) to (40 mm, 70 mm)")
                .check();
    }

    @Test
    void aBoxIsAroundItselfAndWhatReachesNoneOfItsSides() {
        Box box = Box.ofSi(0, 0, 4, 3);

        assertThat(box.isAround(box)).isTrue();
        assertThat(box.isAround(Box.ofSi(1, 1, 2, 2))).isTrue();
        assertThat(box.isAround(Box.ofSi(-1, 1, 2, 2))).isFalse();
        assertThat(box.isAround(Box.ofSi(1, -1, 2, 2))).isFalse();
        assertThat(box.isAround(Box.ofSi(1, 1, 5, 2))).isFalse();
        assertThat(box.isAround(Box.ofSi(1, 1, 2, 4))).isFalse();
    }

    @Test
    void rules() {
        ValueContract.of(() -> RULES)
                .tells("kerf", CuttingRules::kerfSi, 0.0008)
                .tells("pierce room", CuttingRules::pierceClearanceSi, 0.0024)
                .tells("corner room", CuttingRules::cornerClearanceSi, 0.0016)
                .tells("web", CuttingRules::minimumWebSi, 0.0025)
                .change(
                        "lead",
                        rules -> rules.withLead(millimetres(5), millimetres(3.5)),
                        CuttingRules::leadLengthSi,
                        0.005)
                .change(
                        "radius",
                        rules -> rules.withLead(millimetres(3), millimetres(6)),
                        CuttingRules::leadRadiusSi,
                        0.006)
                .differs("pierce room", RULES.withPierceClearance(millimetres(4)))
                .differs("corner room", RULES.withCornerClearance(millimetres(0)))
                .differs("web", RULES.withMinimumWeb(millimetres(1)))
                .differs("kerf", CuttingRules.of(millimetres(0.9), millimetres(10)))
                .says("kerf_width", "lead_length", "lead_radius", "pierce_room", "corner_room", "least_web")
                .check();
        // a thin plate: two kerf widths count
        assertThat(CuttingRules.of(millimetres(0.8), millimetres(2)).minimumWebSi())
                .isEqualTo(0.0016);
        assertThat(RULES.withLeadScaled(0.5).leadLengthSi()).isEqualTo(0.0015);
        assertThat(RULES.withLeadScaled(0.5).leadRadiusSi()).isEqualTo(0.00175);
        assertThat(RULES.withPierceClearance(millimetres(4)).pierceClearanceSi()).isEqualTo(0.004);
        assertThat(RULES.withCornerClearance(millimetres(0)).cornerClearanceSi()).isZero();
        assertThat(RULES.withMinimumWeb(millimetres(1)).minimumWebSi()).isEqualTo(0.001);
        assertThatThrownBy(() -> CuttingRules.of(millimetres(0.8), millimetres(0)))
                .hasMessageStartingWith("thickness is 0 mm");
        assertThatThrownBy(() -> CuttingRules.of(millimetres(0), millimetres(1)))
                .hasMessageStartingWith("kerf width is 0 mm");
        assertThatThrownBy(() -> RULES.withPierceClearance(millimetres(0.7)))
                .hasMessageStartingWith("distance of the pierce point is 0.7 mm");
        assertThatThrownBy(() -> RULES.withCornerClearance(millimetres(-1)))
                .hasMessageStartingWith("distance of a lead from a corner is -1 mm");
        assertThatThrownBy(() -> RULES.withMinimumWeb(millimetres(0))).hasMessageStartingWith("least web is 0 mm");
        assertThatThrownBy(() -> RULES.withLead(millimetres(0), millimetres(1)))
                .hasMessageStartingWith("length of the lead is 0 mm");
        assertThatThrownBy(() -> RULES.withLead(millimetres(1), millimetres(0)))
                .hasMessageStartingWith("radius of the lead is 0 mm");
    }

    @Test
    void limitsOfTheMachine() {
        MachineLimits limits = MachineLimits.of(metresPerSecond(0.3), metresPerSquareSecond(1));
        ValueContract.of(() -> limits)
                .tells("speed", MachineLimits::speedXSi, 0.3)
                .tells("deviation", MachineLimits::deviationSi, 1e-5)
                .change(
                        "speed of y",
                        machine -> machine.withAxisSpeeds(metresPerSecond(0.3), metresPerSecond(0.2)),
                        MachineLimits::speedYSi,
                        0.2)
                .change(
                        "acceleration of y",
                        machine -> machine.withAxisAccelerations(metresPerSquareSecond(1), metresPerSquareSecond(2)),
                        MachineLimits::accelerationYSi,
                        2.0)
                .change(
                        "jerk",
                        machine -> machine.withJerk(Kind.JERK.of(20)),
                        MachineLimits::jerk,
                        Optional.of(Kind.JERK.of(20)))
                .change(
                        "least feed",
                        machine -> machine.withMinimumFeed(millimetresPerMinute(7)),
                        MachineLimits::minimumFeed,
                        millimetresPerMinute(7))
                .differs("deviation", limits.withCornerDeviation(millimetres(0.02)))
                .differs("speed", limits.withAxisSpeeds(metresPerSecond(0.4), metresPerSecond(0.3)))
                .differs(
                        "acceleration of x",
                        limits.withAxisAccelerations(metresPerSquareSecond(3), metresPerSquareSecond(1)))
                .says("speed_x", "speed_y", "acceleration_x", "acceleration_y", "corner_deviation", "least_feed")
                .check();
        assertThat(Kind.SPEED.si(limits.minimumFeed())).isEqualTo(0.001 / 60);
        assertThat(limits.jerk()).isEmpty();
        assertThat(limits.toString()).doesNotContain("jerk");
        assertThat(limits.withJerk(Kind.JERK.of(20)).toString()).contains("jerk");
        // 0.8 of the weaker axis across leaves 0.6 of it along: 0.8^2 + 0.6^2 = 1
        assertThat(Kind.ACCELERATION.si(limits.withAxisAccelerations(metresPerSquareSecond(3), metresPerSquareSecond(2))
                        .centripetalAcceleration()))
                .isEqualTo(1.6);
        assertThatThrownBy(() -> limits.withJerk(Kind.JERK.of(0))).hasMessageStartingWith("jerk is 0");
        assertThatThrownBy(() -> limits.withCornerDeviation(millimetres(0)))
                .hasMessageStartingWith("deviation in rounding a corner is 0 mm");
        assertThatThrownBy(() -> limits.withMinimumFeed(millimetresPerMinute(-1)))
                .hasMessageStartingWith("least feed is -1 mm/min");
        assertThatThrownBy(() -> limits.withAxisSpeeds(metresPerSecond(1), metresPerSecond(0)))
                .hasMessageStartingWith("greatest speed of the y axis is 0");
        assertThatThrownBy(() -> limits.withAxisSpeeds(metresPerSecond(0), metresPerSecond(1)))
                .hasMessageStartingWith("greatest speed of the x axis is 0");
        assertThatThrownBy(() -> limits.withAxisAccelerations(metresPerSquareSecond(0), metresPerSquareSecond(1)))
                .hasMessageStartingWith("acceleration of the x axis is 0");
        assertThatThrownBy(() -> limits.withAxisAccelerations(metresPerSquareSecond(1), metresPerSquareSecond(0)))
                .hasMessageStartingWith("acceleration of the y axis is 0");
    }

    @Test
    void feedsOfGrades() {
        ValueContract.of(() -> QualityFeeds.same(millimetresPerMinute(200)))
                .tells("medium", feeds -> feeds.feed(CutQuality.MEDIUM), millimetresPerMinute(200))
                .change(
                        "fine",
                        feeds -> feeds.with(CutQuality.FINE, millimetresPerMinute(90)),
                        feeds -> feeds.feed(CutQuality.FINE),
                        millimetresPerMinute(90))
                .differs("all", QualityFeeds.same(millimetresPerMinute(201)))
                .says("very_coarse", "coarse", "medium", "fine", "very_fine")
                .check();
        assertThatThrownBy(() -> QualityFeeds.same(millimetresPerMinute(0)))
                .hasMessageStartingWith("feed for a face of grade very coarse is 0 mm/min");
    }

    @Test
    void contoursAndEdges() {
        Point start = Point.millimetres(0, 0);
        Point end = Point.millimetres(10, 0);
        Point centre = Point.millimetres(5, 0);
        ValueContract.of(() -> rectangle(30, 20))
                .tells("size", Contour::size, 4)
                .tells("closed", Contour::isClosed, true)
                .tells("start", Contour::start, start)
                .tells("end", Contour::end, start)
                .differs("width", rectangle(31, 20))
                .differs("height", rectangle(30, 21))
                .differs("finish", rectangle(30, 20).withRequirement(MEDIUM.asLead()))
                .differs(
                        "open",
                        Contour.from(start)
                                .lineToSi(0.03, 0)
                                .lineToSi(0.03, 0.02)
                                .lineToSi(0, 0.02)
                                .lineTo(start)
                                .open())
                .differs(
                        "arc",
                        Contour.from(start)
                                .lineToSi(0.03, 0)
                                .arcToSi(0.03, 0.02, 0.03, 0.01, Side.LEFT)
                                .lineToSi(0, 0.02)
                                .close())
                .says("closed contour of 4 edges from (0 mm, 0 mm)")
                .check();
        assertThat(Contour.from(start).lineTo(end).open()).hasToString("open contour of 1 edge from (0 mm, 0 mm)");
        assertThat(arc(Side.LEFT)).isNotEqualTo(arc(Side.RIGHT));
        ValueContract.of(() -> arc(Side.LEFT).edge(0))
                .tells("start", Edge::start, start)
                .tells("end", Edge::end, end)
                .tells("centre", Edge::centre, Optional.of(centre))
                .tells("radius", Edge::radius, Optional.of(millimetres(5)))
                .tells("turn", Edge::turn, Optional.of(Side.LEFT))
                .tells("sweep", Edge::sweep, degrees(180))
                .tells("length", Edge::length, millimetres(5 * Math.PI))
                .tells("finish", Edge::requirement, EdgeRequirement.defaults())
                .differs("turn", arc(Side.RIGHT).edge(0))
                .differs("line", Contour.from(start).lineTo(end).open().edge(0))
                .differs("start", arc(Side.LEFT).reversed().edge(0))
                .differs("finish", arc(Side.LEFT).withRequirement(MEDIUM.asLead()).edge(0))
                .says("arc (0 mm, 0 mm) to (10 mm, 0 mm)")
                .check();
        Edge line = Contour.from(start).lineTo(end).open().edge(0);
        assertThat(line).hasToString("line (0 mm, 0 mm) to (10 mm, 0 mm)");
        assertThat(line.centre()).isEmpty();
        assertThat(line.radius()).isEmpty();
        assertThat(line.turn()).isEmpty();
        assertThat(Kind.ANGLE.si(line.sweep())).isZero();
        assertThat(Kind.LENGTH.si(line.length())).isEqualTo(0.01);
        assertThat(arc(Side.RIGHT).edge(0).turn()).contains(Side.RIGHT);
        assertThat(arc(Side.RIGHT).edge(0).length())
                .isEqualTo(arc(Side.LEFT).edge(0).length());
    }

    private static Contour arc(Side turn) {
        return Contour.fromSi(0, 0).arcToSi(0.01, 0, 0.005, 0, turn).open();
    }

    @Test
    void partsSheetsAndSlats() {
        Contour hole = Contour.circle(Point.millimetres(10, 10), millimetres(2), MEDIUM);
        ValueContract.of(() -> Part.of(rectangle(30, 20), hole))
                .tells("outline", Part::outline, rectangle(30, 20))
                .tells("holes", Part::holes, List.of(hole))
                .tells("contours", Part::contours, List.of(hole, rectangle(30, 20)))
                .differs("outline", Part.of(rectangle(31, 20), hole))
                .differs("holes", Part.of(rectangle(30, 20)))
                .says("part of 4 edges with 1 holes")
                .check();
        Part part = Part.of(rectangle(30, 20));
        ValueContract.of(() -> SheetLayout.of(rectangle(300, 200), List.of(part)))
                .differs("sheet", SheetLayout.of(rectangle(300, 210), List.of(part)))
                .differs("parts", SheetLayout.of(rectangle(300, 200), List.of(part, part)))
                .says("1 parts on a sheet of 300 mm by 200 mm")
                .check();
        ValueContract.of(() -> Slats.of(millimetres(50), millimetres(4)))
                .differs("pitch", Slats.of(millimetres(40), millimetres(4)))
                .differs("thickness", Slats.of(millimetres(50), millimetres(5)))
                .differs("direction", Slats.of(millimetres(50), millimetres(4)).withDirection(degrees(0)))
                .says("slats every 50 mm")
                .check();
        assertThatThrownBy(() -> Slats.of(millimetres(4), millimetres(4)))
                .hasMessageContaining("the thickness of a slat");
        assertThatThrownBy(() -> Slats.of(millimetres(0), millimetres(0)))
                .hasMessageStartingWith("pitch of the slats is 0 mm");
        assertThatThrownBy(() -> Slats.of(millimetres(4), millimetres(-1)))
                .hasMessageStartingWith("thickness of a slat is -1 mm");
        assertThatThrownBy(() -> Slats.of(millimetres(50), millimetres(4))
                        .withDirection(Kind.ANGLE.of(Double.POSITIVE_INFINITY)))
                .isInstanceOf(DomainException.class);
    }

    @Test
    void tabs() {
        HoldingTabs tabs = HoldingTabs.of(newtons(300), megapascals(150), millimetres(10), RULES);
        ValueContract.of(() -> tabs)
                .differs("force", HoldingTabs.of(newtons(301), megapascals(150), millimetres(10), RULES))
                .differs("strength", HoldingTabs.of(newtons(300), megapascals(151), millimetres(10), RULES))
                .differs("plate", HoldingTabs.of(newtons(300), megapascals(150), millimetres(11), RULES))
                .differs(
                        "kerf",
                        HoldingTabs.of(
                                newtons(300),
                                megapascals(150),
                                millimetres(10),
                                CuttingRules.of(millimetres(1), millimetres(10))))
                .differs("safety", tabs.withSafety(4))
                .says("holding tabs against 300")
                .check();
        assertThatThrownBy(() -> HoldingTabs.of(newtons(0), megapascals(150), millimetres(10), RULES))
                .hasMessageStartingWith("force on the part is 0 N");
        assertThatThrownBy(() -> HoldingTabs.of(newtons(1), megapascals(0), millimetres(10), RULES))
                .hasMessageStartingWith("shear strength is 0 MPa");
        assertThatThrownBy(() -> HoldingTabs.of(newtons(1), megapascals(1), millimetres(0), RULES))
                .hasMessageStartingWith("thickness is 0 mm");
        assertThatThrownBy(() -> tabs.width(0)).hasMessageStartingWith("number of tabs is 0");
        assertThatThrownBy(() -> tabs.suggest(rectangle(10, 10), 1))
                .hasMessageContaining("one tab lets the part swing");
    }

    @Test
    void leadsAndFindings() {
        Contour path = arc(Side.LEFT);
        Finding met = Finding.of("web", true, "wide enough", "widen it", Point.millimetres(1, 2));
        Finding missed = Finding.of("web", false, "too narrow", "widen it", Point.millimetres(1, 2));
        ValueContract.of(() -> Finding.of("web", false, "too narrow", "widen it", Point.millimetres(1, 2)))
                .tells("code", Finding::code, "web")
                .tells("met", Finding::isSatisfied, false)
                .tells("reason", Finding::reason, "too narrow")
                .tells("suggestion", Finding::suggestion, "widen it")
                .tells("place", Finding::place, Point.millimetres(1, 2))
                .differs("code", Finding.of("room", false, "too narrow", "widen it", Point.millimetres(1, 2)))
                .differs("met", met)
                .differs("reason", Finding.of("web", false, "narrow", "widen it", Point.millimetres(1, 2)))
                .differs("suggestion", Finding.of("web", false, "too narrow", "move", Point.millimetres(1, 2)))
                .differs("place", Finding.of("web", false, "too narrow", "widen it", Point.millimetres(1, 3)))
                .says("web not met: too narrow; widen it")
                .check();
        assertThat(met).hasToString("web: wide enough");
        assertThat(Finding.atLeast("web", "web", 0.002, 0.002, "widen it", Point.ofSi(0, 0))
                        .isSatisfied())
                .isTrue();
        assertThat(Finding.atLeast("web", "web", Double.POSITIVE_INFINITY, 0.002, "widen it", Point.ofSi(0, 0)))
                .hasToString("web: web is free, at least 2 mm is wanted");
        ValueContract.of(() -> new Lead(Point.millimetres(0, 0), Point.millimetres(10, 0), path, List.of(met)))
                .tells("pierce", Lead::pierce, Point.millimetres(0, 0))
                .tells("entry", Lead::entry, Point.millimetres(10, 0))
                .tells("path", Lead::path, path)
                .tells("findings", Lead::findings, List.of(met))
                .tells("good", Lead::isGood, true)
                .differs(
                        "path",
                        new Lead(Point.millimetres(0, 0), Point.millimetres(10, 0), arc(Side.RIGHT), List.of(met)))
                .differs("findings", new Lead(Point.millimetres(0, 0), Point.millimetres(10, 0), path, List.of(missed)))
                .says("lead from (0 mm, 0 mm) to (10 mm, 0 mm)")
                .check();
        assertThat(new Lead(Point.ofSi(0, 0), Point.ofSi(0, 0), path, List.of(met, missed)).isGood())
                .isFalse();
    }

    @Test
    void blocksAndSlowSpots() {
        Contour line = Contour.fromSi(0, 0).lineToSi(0.1, 0).open();
        double v = 0.02;
        ValueContract.of(() -> plan(line, 1200).block(0))
                .tells("edge", PlanBlock::edge, 0)
                .tells("length", PlanBlock::length, millimetres(100))
                .tells("entry", PlanBlock::entry, metresPerSecond(0))
                .tells("greatest", PlanBlock::peakFeed, metresPerSecond(v))
                .tells("exit", PlanBlock::exit, metresPerSecond(0))
                .tells("time", PlanBlock::time, Kind.TIME.of(0.1 / v + v))
                .tells("limit", PlanBlock::limit, FeedLimit.QUALITY)
                .differs("feed", plan(line, 1100).block(0))
                .differs(
                        "length",
                        plan(Contour.fromSi(0, 0).lineToSi(0.11, 0).open(), 1200)
                                .block(0))
                .says("edge", "length", "entry", "greatest", "exit", "time", "limit")
                .check();
        // 0.9 v is passed 0.81 v^2 / 2 after the start, after 0.9 v
        ValueContract.of(() -> plan(line, 1200).slowZones(0.9).get(0))
                .tells("edge", SlowZone::edge, 0)
                .tells("place", SlowZone::place, Point.ofSi(0, 0))
                .tells("start", SlowZone::startsAt, millimetres(0))
                .tells("end", spot -> (float) Kind.LENGTH.si(spot.endsAt()), (float) (0.81 * v * v / 2))
                .tells("least", SlowZone::minimumFeed, metresPerSecond(0))
                .tells("mean", spot -> (float) Kind.SPEED.si(spot.mean()), (float) (0.45 * v))
                .tells("usual", SlowZone::nominalFeed, metresPerSecond(v))
                .tells("time", spot -> (float) Kind.TIME.si(spot.time()), (float) (0.9 * v))
                .tells("limit", SlowZone::limit, FeedLimit.PATH_END)
                .differs("end", plan(line, 1200).slowZones(0.8).get(0))
                .differs("feed", plan(line, 1000).slowZones(0.9).get(0))
                .differs("place", plan(line, 1200).slowZones(0.9).get(1))
                .says("edge", "starts_at", "ends_at", "least", "usual", "time", "limit")
                .check();
        SlowZone last = plan(line, 1200).slowZones(0.9).get(1);
        assertThat(last.place()).isEqualTo(Point.millimetres(100, 0));
        assertThat(Kind.LENGTH.si(last.endsAt())).isEqualTo(0.1);
        assertThat((float) Kind.LENGTH.si(last.startsAt())).isEqualTo((float) (0.1 - 0.81 * v * v / 2));
        assertThatThrownBy(() -> plan(line, 1200).slowZones(0)).hasMessageStartingWith("share of the feed is 0");
        assertThatThrownBy(() -> plan(line, 1200).slowZones(1.01)).hasMessageStartingWith("share of the feed is 1.01");
        assertThat(plan(line, 1200).slowZones(1)).hasSize(2);
    }

    @Test
    void wordsOfLimitsAndSides() {
        assertThat(FeedLimit.QUALITY.label()).isEqualTo("grade of the face");
        assertThat(FeedLimit.FRONT_RECOVERY.isOfFront()).isTrue();
        assertThat(FeedLimit.LAG_ON_ARC.isOfFront()).isTrue();
        assertThat(FeedLimit.MACHINE_SPEED.isOfFront()).isFalse();
        assertThat(FeedLimit.PATH_END.isOfFront()).isFalse();
        for (FeedLimit limit : FeedLimit.values()) {
            assertThat(FeedLimit.of(limit.code())).isEqualTo(limit);
            assertThat(limit.label()).isNotBlank();
        }
        assertThat(Side.LEFT.opposite()).isEqualTo(Side.RIGHT);
        assertThat(Side.RIGHT.opposite()).isEqualTo(Side.LEFT);
    }

    @Test
    void aPathFaultTellsEdgeAndPlace() {
        GeometryException fault = new GeometryException(3, 0.001, 0.002, "it ends here");

        assertThat(fault.edge()).isEqualTo(3);
        assertThat(fault.xSi()).isEqualTo(0.001);
        assertThat(fault.ySi()).isEqualTo(0.002);
        assertThat(fault).hasMessage("edge 3 at (1 mm, 2 mm): it ends here");
    }
}
