package dev.waterjet.plan;

import static dev.waterjet.Refusals.assertRefused;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.newtons;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.part.Contour;
import dev.waterjet.part.ContourPlace;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.Finding;
import dev.waterjet.part.GeometryException;
import dev.waterjet.part.Part;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import dev.waterjet.quality.EdgeRequirement;
import dev.waterjet.toolpath.CuttingRules;
import dev.waterjet.toolpath.HoldingTabs;
import dev.waterjet.toolpath.Lead;
import dev.waterjet.toolpath.LeadPlacer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Tabs at places of the caller, against a walk along the contour in small steps. */
class TabPlacesTest {

    private static final CuttingRules RULES = CuttingRules.of(millimetres(0.8), millimetres(10));

    private static Contour loop() {
        return Contour.from(Point.millimetres(0, 0))
                .lineTo(Point.millimetres(60, 0))
                .arcTo(Point.millimetres(60, 30), Point.millimetres(60, 15), Side.LEFT)
                .lineTo(Point.millimetres(10, 40))
                .arcThrough(Point.millimetres(-5, 20), Point.millimetres(0, 0))
                .close();
    }

    private static Point at(Contour contour, double distance) {
        double total = contour.lengthSi();
        ContourPlace place = contour.placeAtSi((distance % total + total) % total);
        EdgeCursor edge = new EdgeCursor();
        contour.load(place.edge(), edge);
        return Point.ofSi(edge.xAt(place.share()), edge.yAt(place.share()));
    }

    /** Distance along a contour of the point nearest to a place, within a step. */
    private static double nearest(Contour contour, Point place) {
        double total = contour.lengthSi();
        int steps = 20_000;
        double best = 0;
        double least = Double.POSITIVE_INFINITY;
        EdgeCursor edge = new EdgeCursor();
        double before = 0;
        for (int i = 0; i < contour.size(); i++) {
            contour.load(i, edge);
            int parts = (int) Math.ceil(steps * edge.length() / total);
            for (int k = 0; k < parts; k++) {
                double share = (k + 0.5) / parts;
                double away = Math.hypot(edge.xAt(share) - place.xSi(), edge.yAt(share) - place.ySi());
                if (away < least) {
                    least = away;
                    best = before + share * edge.length();
                }
            }
            before += edge.length();
        }
        return best;
    }

    @Test
    void tabsLieWhereTheLoopIsNearestToTheirPlaces() {
        Contour loop = loop();
        double total = loop.lengthSi();
        for (int seed = 0; seed < 12; seed++) {
            Random random = new Random(seed);
            List<Point> places = new ArrayList<>();
            for (int k = 0; k < 3; k++) {
                places.add(Point.millimetres(-5 + 80 * random.nextDouble(), -5 + 50 * random.nextDouble()));
            }
            double gap = 0.004;
            List<Finding> findings = new ArrayList<>();
            double[] expected = places.stream()
                    .mapToDouble(place -> Math.max(0.002, Math.min(total - 0.002, nearest(loop, place))))
                    .sorted()
                    .toArray();

            assertThat(TabPlaces.along(loop, places, gap, findings).toSi()).containsExactly(expected, within(2e-5));
        }
    }

    /** A tab of 4 mm at the start of the loop is 2 mm beside it; moved by more than 0.5 mm, it is a finding. */
    @Test
    void aTabOverTheStartLiesBesideIt() {
        Contour loop = loop();
        double total = loop.lengthSi();
        for (double way : new double[] {-1, 1}) {
            for (double away : new double[] {0, 0.5e-3, 1.49e-3, 1.52e-3, 1.9e-3, 2.1e-3}) {
                List<Finding> findings = new ArrayList<>();
                Point place = at(loop, way > 0 ? away + 1e-9 : total - away - 1e-9);
                double found =
                        TabPlaces.along(loop, List.of(place), 0.004, findings).toSi()[0];
                double fromStart = way > 0 ? found : total - found;
                assertThat(fromStart).isCloseTo(Math.max(0.002, away), within(2e-6));
                assertThat(findings).hasSize(away < 1.5e-3 ? 1 : 0);
                for (Finding finding : findings) {
                    assertThat(finding.code()).isEqualTo("tab-beside-lead");
                    assertThat(finding.place()).isEqualTo(place);
                    assertThat((Double) finding.message().parameters().get("moved_m"))
                            .isCloseTo(0.002 - away, within(2e-6));
                }
            }
        }
    }

    @Test
    void aPlaceBelongsToTheNearestContour() {
        Contour near = Contour.circle(Point.millimetres(0, 0), millimetres(10), EdgeRequirement.defaults());
        Contour far = Contour.circle(Point.millimetres(40, 0), millimetres(10), EdgeRequirement.defaults());
        List<Contour> all = List.of(near, far);
        List<Point> places = List.of(Point.millimetres(19, 0), Point.millimetres(21, 0), Point.millimetres(0, 0));
        TabPlaces tabs = new TabPlaces(places, null);

        assertThat(tabs.on(near, all)).containsExactly(places.get(0), places.get(2));
        assertThat(tabs.on(far, all)).containsExactly(places.get(1));
    }

    @Test
    void theWidthIsThatStatedElseThatOfTheSizing() {
        HoldingTabs sizing = HoldingTabs.of(newtons(200), megapascals(150), millimetres(8), RULES);
        TabPlaces stated = new TabPlaces(List.of(), 0.0015);
        TabPlaces open = new TabPlaces(List.of(), null);

        assertThat(stated.widthM(Optional.of(sizing), 3)).isEqualTo(0.0015);
        assertThat(stated.widthM(Optional.empty(), 3)).isEqualTo(0.0015);
        for (int count = 1; count < 5; count++) {
            assertThat(open.widthM(Optional.of(sizing), count)).isEqualTo(Kind.LENGTH.si(sizing.width(count)));
        }
        assertRefused(() -> open.widthM(Optional.empty(), 3), "tab-width-missing");
    }

    /** The entry keeps its distance from every tab, either way round; where it does, it stays. */
    @Test
    void aLeadEntersBesideTheTabs() {
        Contour plate =
                Contour.rectangle(Point.millimetres(0, 0), Point.millimetres(80, 50), EdgeRequirement.defaults());
        LeadPlacer placer = LeadPlacer.of(Part.of(plate), RULES);
        double total = plate.lengthSi();
        double room = 0.006;
        for (double entry : new double[] {0.001, 0.02, 0.1, 0.2, 0.2595}) {
            Lead suggested = placer.at(0, Kind.LENGTH.of(entry));
            for (double[] tabs : new double[][] {
                {entry + 0.00601},
                {entry - 0.00601},
                {entry + 0.00599},
                {entry - 0.00599},
                {entry},
                {entry, entry + 0.008, entry - 0.008},
                {entry + 0.1}
            }) {
                List<Point> on =
                        Arrays.stream(tabs).mapToObj(tab -> at(plate, tab)).toList();
                Lead lead =
                        TabPlaces.besideTabs(suggested, plate, on, room, place -> placer.at(0, Kind.LENGTH.of(place)));
                double found = nearest(plate, lead.entry());
                double least = total;
                for (double tab : tabs) {
                    double apart = Math.abs(((found - tab) % total + total) % total);
                    least = Math.min(least, Math.min(apart, total - apart));
                }
                boolean isFree = Arrays.stream(tabs).allMatch(tab -> Math.abs(tab - entry) > room);
                if (isFree) {
                    assertThat(lead).isSameAs(suggested);
                } else {
                    assertThat(least).isGreaterThan(room - 2e-5);
                    assertThat(lead.isClear()).isTrue();
                    // one of 64 steps either way is far enough, two or three where a corner or another tab lies there
                    double away = Math.abs(((found - entry) % total + total) % total);
                    assertThat(Math.min(away, total - away)).isLessThan(5.01 * total / 64);
                }
            }
        }
    }

    /** Where no place is free of tabs, or none can be entered, the suggestion stays. */
    @Test
    void theSuggestionStaysWhereNoOtherEntryIsClear() {
        Contour plate =
                Contour.rectangle(Point.millimetres(0, 0), Point.millimetres(80, 50), EdgeRequirement.defaults());
        LeadPlacer placer = LeadPlacer.of(Part.of(plate), RULES);
        Lead suggested = placer.at(0, millimetres(20));
        List<Point> on = List.of(at(plate, 0.02));

        assertThat(TabPlaces.besideTabs(suggested, plate, on, 1, place -> placer.at(0, Kind.LENGTH.of(place))))
                .isSameAs(suggested);
        assertThat(TabPlaces.besideTabs(suggested, plate, on, 0.005, place -> {
                    throw new GeometryException(plate, 0, 0, 0, Message.of("entry-out-of-reach", "not here"));
                }))
                .isSameAs(suggested);
    }
}
