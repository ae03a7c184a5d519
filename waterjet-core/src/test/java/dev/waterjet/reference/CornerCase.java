package dev.waterjet.reference;

import dev.waterjet.kerf.CutFront;
import dev.waterjet.kerf.KerfProfile;
import dev.waterjet.kerf.LagModel;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;

/**
 * One row of {@code reference/virtual-cut/corners.csv}: a corner in mild steel, cut at 380 MPa with an orifice of 0.33 mm, a
 * focusing tube of 1.02 mm and 450 g/min.
 *
 * @param thicknessM thickness of the workpiece
 * @param quality cut quality
 * @param index its quality index
 * @param turnRad turn
 * @param isInside whether the part is re-entrant there
 * @param toleranceM deviation allowed
 * @param feedRatio feed at the corner over the straight feed
 * @param reason what decided on it
 * @param predictedM predicted error
 * @param gougeM greatest gouge of a simulation: in the tangent geometry inside, in the tractrix geometry outside
 * @param excessM greatest excess of material of the same simulation
 * @param gougeTangentM greatest gouge in the tangent geometry
 */
public record CornerCase(
        double thicknessM,
        String quality,
        double index,
        double turnRad,
        boolean isInside,
        double toleranceM,
        double feedRatio,
        String reason,
        double predictedM,
        double gougeM,
        double excessM,
        double gougeTangentM) {

    /** Machinability number of mild steel, and the constants of the equation in mm, MPa, g/min and mm/min. */
    private static final double DEPTH_AT_UNIT_FEED_MM =
            87.6 * Math.pow(380, 1.594) * Math.pow(0.33, 1.374) * Math.pow(450, 0.343) / (788 * Math.pow(1.02, 0.618));

    private static final double EXPONENT = 1.15;
    private static final double BORE_M = 1.02e-3;
    private static final double SPREAD_SLOPE = Math.tan(Math.toRadians(1));

    /** Every row. */
    public static List<CornerCase> all() {
        CSVFormat format = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get();
        List<CornerCase> cases = new ArrayList<>();
        try (InputStream stream = CornerCase.class.getResourceAsStream("/reference/virtual-cut/corners.csv")) {
            for (CSVRecord row : format.parse(new InputStreamReader(stream, StandardCharsets.UTF_8))) {
                cases.add(new CornerCase(
                        millimetres(row, "thickness_mm"),
                        row.get("quality"),
                        Double.parseDouble(row.get("index")),
                        Math.toRadians(Double.parseDouble(row.get("turn_deg"))),
                        row.get("side").equals("inside"),
                        millimetres(row, "tolerance_mm"),
                        Double.parseDouble(row.get("feed_ratio")),
                        row.get("reason"),
                        millimetres(row, "predicted_mm"),
                        millimetres(row, "gouge_mm"),
                        millimetres(row, "excess_mm"),
                        millimetres(row, "gouge_tangent_mm")));
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return cases;
    }

    private static double millimetres(CSVRecord row, String column) {
        return Double.parseDouble(row.get(column)) * 1e-3;
    }

    /** The kerf profile of the row's setting. */
    public KerfProfile profile() {
        return profile(thicknessM);
    }

    /** The kerf profile of a thickness. */
    public static KerfProfile profile(double thicknessM) {
        CutFront front = CutFront.powerLaw(
                LagModel.standard(),
                thicknessM,
                EXPONENT,
                DEPTH_AT_UNIT_FEED_MM * 1e-3 * Math.pow(60e3, -1 / EXPONENT));
        return KerfProfile.ofSi(
                front,
                KerfProfile.doseSpreadSi(0.27 * BORE_M, EXPONENT),
                KerfProfile.entryRadiusSi(BORE_M, 2e-3, SPREAD_SLOPE),
                SPREAD_SLOPE);
    }

    /** The feed of the straight cut. */
    public double straightFeed() {
        return profile().front().separationFeedSi(index * thicknessM);
    }
}
