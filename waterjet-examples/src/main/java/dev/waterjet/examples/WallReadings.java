package dev.waterjet.examples;

import dev.waterjet.calibrate.ArcMeasurement;
import dev.waterjet.calibrate.KerfMeasurement;
import dev.waterjet.calibrate.LagMeasurement;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.feed.FeedModel;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.material.Material;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.WaterjetException;
import dev.waterjet.simulate.CornerMeasurement;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Angle;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;

/** Widths, drag lines, arcs and corners of test cuts, from one file. */
final class WallReadings {

    private static final Map<String, Kind<?>> KINDS = Map.of(
            "thickness", Kind.LENGTH,
            "feed", Kind.SPEED,
            "stand_off", Kind.LENGTH,
            "depth", Kind.LENGTH,
            "value", Kind.LENGTH,
            "radius", Kind.LENGTH,
            "turn", Kind.ANGLE,
            "corner_feed", Kind.SPEED,
            "zone", Kind.LENGTH);

    private final AbrasiveJet jet;
    private final Material material;
    private final FeedModel model;

    private final List<KerfMeasurement> widths = new ArrayList<>();
    private final Map<String, LagMeasurement> lines = new LinkedHashMap<>();
    private final List<ArcMeasurement> arcs = new ArrayList<>();
    private final List<CornerMeasurement> corners = new ArrayList<>();

    private WallReadings(AbrasiveJet jet, Material material, FeedModel model) {
        this.jet = jet;
        this.material = material;
        this.model = model;
    }

    static WallReadings parse(String name, String text, AbrasiveJet jet, Material material, FeedModel model) {
        WallReadings readings = new WallReadings(jet, material, model);
        for (ReadingsFile.Row row : ReadingsFile.parse(name, text, KINDS).rows()) {
            try {
                readings.add(row);
            } catch (dev.waterjet.measure.TextException e) {
                throw e;
            } catch (WaterjetException e) {
                throw row.fault(e.getMessage());
            }
        }
        return readings;
    }

    private void add(ReadingsFile.Row row) {
        CutConditions cut = cut(row);
        Quantity<Speed> feed = row.required("feed", Kind.SPEED);
        Quantity<Length> value = row.required("value", Kind.LENGTH);
        switch (row.text("reading")) {
            case "width" ->
                widths.add(KerfMeasurement.atFeed(cut, feed).withWidthAt(row.required("depth", Kind.LENGTH), value));
            case "lag" -> {
                Quantity<Length> separated = Kind.LENGTH.of(cut.separationDepthSi(Kind.SPEED.si(feed)));
                String line = row.has("line") ? row.text("line") : "line " + separated;
                lines.merge(
                        line,
                        read(LagMeasurement.of(separated), row, value),
                        (known, ignored) -> read(known, row, value));
            }
            case "arc" ->
                arcs.add(ArcMeasurement.of(
                                cut.workpiece().thickness(),
                                Kind.LENGTH.of(cut.separationDepthSi(Kind.SPEED.si(feed))),
                                row.required("radius", Kind.LENGTH))
                        .withShift(value));
            case "corner" -> corners.add(corner(row, cut, feed).withDeviation(value));
            default ->
                throw row.fault("reading is \"" + row.text("reading") + "\"; use one of width, lag, arc, corner");
        }
    }

    private static LagMeasurement read(LagMeasurement line, ReadingsFile.Row row, Quantity<Length> value) {
        double depth = Kind.LENGTH.si(row.required("depth", Kind.LENGTH));
        return line.withLags(
                QuantityArray.ofSi(Kind.LENGTH, depth), QuantityArray.ofSi(Kind.LENGTH, Kind.LENGTH.si(value)));
    }

    private static CornerMeasurement corner(ReadingsFile.Row row, CutConditions cut, Quantity<Speed> feed) {
        Quantity<Angle> turn = row.required("turn", Kind.ANGLE);
        CornerMeasurement corner = CornerMeasurement.of(cut, feed, turn);
        return row.has("corner_feed")
                ? corner.withZone(row.required("corner_feed", Kind.SPEED), row.required("zone", Kind.LENGTH))
                : corner;
    }

    private CutConditions cut(ReadingsFile.Row row) {
        Workpiece workpiece = Workpiece.of(material, row.required("thickness", Kind.LENGTH));
        AbrasiveJet used = row.has("stand_off")
                ? jet.head()
                        .withStandOff(Objects.requireNonNull(row.optional("stand_off", Kind.LENGTH)))
                        .jet(jet.water().pressure(), jet.abrasive(), jet.abrasiveFlow())
                : jet;
        return CutConditions.of(used, workpiece, model);
    }

    List<KerfMeasurement> widths() {
        return widths;
    }

    List<LagMeasurement> lines() {
        return List.copyOf(lines.values());
    }

    List<ArcMeasurement> arcs() {
        return arcs;
    }

    List<CornerMeasurement> corners() {
        return corners;
    }
}
