package dev.waterjet.sheet;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;

/** A sheet, the equal parts to lie on it, the border to keep free and the gap between two parts. */
public final class SheetRoom implements Serializable {

    private static final long serialVersionUID = 1L;

    private static final double MOST_PARTS = 10e6;

    private final double sheetWidthM;
    private final double sheetHeightM;
    private final double partWidthM;
    private final double partHeightM;
    private final double borderM;
    private final double gapM;

    private SheetRoom(
            double sheetWidthM,
            double sheetHeightM,
            double partWidthM,
            double partHeightM,
            double borderM,
            double gapM) {
        this.sheetWidthM = Require.positive("width of the sheet", sheetWidthM, Units.MILLIMETRE);
        this.sheetHeightM = Require.positive("height of the sheet", sheetHeightM, Units.MILLIMETRE);
        this.borderM = Require.notNegative("border of the sheet", borderM, Units.MILLIMETRE);
        this.gapM = Require.notNegative("gap between parts", gapM, Units.MILLIMETRE);
        this.partWidthM = fitting("width of the part", partWidthM, usableWidthSi());
        this.partHeightM = fitting("height of the part", partHeightM, usableHeightSi());
        Require.atMost(
                "number of cells on the sheet",
                usableWidthSi() / pitchXSi() * (usableHeightSi() / pitchYSi()),
                MOST_PARTS,
                Units.ONE,
                "");
    }

    private static double fitting(String name, double sizeM, double usableM) {
        Require.positive(name, sizeM, Units.MILLIMETRE);
        return Require.atMost(name, sizeM, usableM, Units.MILLIMETRE, "what the sheet leaves within its borders");
    }

    /**
     * A sheet without parts yet.
     *
     * @param width its width, above zero
     * @param height its height, above zero
     * @return the sheet; say next what lies on it
     */
    public static Sheet sheet(Quantity<Length> width, Quantity<Length> height) {
        return new Sheet(Kind.LENGTH.si(width), Kind.LENGTH.si(height), 0, 0);
    }

    /** A sheet, before the parts are known. */
    public static final class Sheet {

        private final double widthM;
        private final double heightM;
        private final double borderM;
        private final double gapM;

        private Sheet(double widthM, double heightM, double borderM, double gapM) {
            this.widthM = widthM;
            this.heightM = heightM;
            this.borderM = borderM;
            this.gapM = gapM;
        }

        /**
         * This sheet with a border to keep free all around.
         *
         * @param border width of the border, zero or more
         * @return the sheet with that border
         */
        public Sheet withBorder(Quantity<Length> border) {
            return new Sheet(widthM, heightM, Kind.LENGTH.si(border), gapM);
        }

        /**
         * This sheet with a gap between parts: kerf and web.
         *
         * @param gap the gap, zero or more
         * @return the sheet with that gap
         */
        public Sheet withGap(Quantity<Length> gap) {
            return new Sheet(widthM, heightM, borderM, Kind.LENGTH.si(gap));
        }

        /**
         * Parts by their bounding box.
         *
         * @param width width of the box, above zero
         * @param height height of the box, above zero
         * @return sheet and parts
         * @throws dev.waterjet.measure.DomainException if not one part fits within the borders, or more than ten million do
         */
        public SheetRoom parts(Quantity<Length> width, Quantity<Length> height) {
            return new SheetRoom(widthM, heightM, Kind.LENGTH.si(width), Kind.LENGTH.si(height), borderM, gapM);
        }
    }

    public double sheetWidthSi() {
        return sheetWidthM;
    }

    public double sheetHeightSi() {
        return sheetHeightM;
    }

    public double usableWidthSi() {
        return sheetWidthM - 2 * borderM;
    }

    public double usableHeightSi() {
        return sheetHeightM - 2 * borderM;
    }

    public double partWidthSi() {
        return partWidthM;
    }

    public double partHeightSi() {
        return partHeightM;
    }

    double borderSi() {
        return borderM;
    }

    public double pitchXSi() {
        return partWidthM + gapM;
    }

    double pitchYSi() {
        return partHeightM + gapM;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof SheetRoom that
                && sheetWidthM == that.sheetWidthM
                && sheetHeightM == that.sheetHeightM
                && partWidthM == that.partWidthM
                && partHeightM == that.partHeightM
                && borderM == that.borderM
                && gapM == that.gapM;
    }

    @Override
    public int hashCode() {
        return Objects.hash(sheetWidthM, sheetHeightM, partWidthM, partHeightM, borderM, gapM);
    }

    @Override
    public String toString() {
        return "sheet of " + sheetWidthM * 1000 + " x " + sheetHeightM * 1000 + " mm for parts of " + partWidthM * 1000
                + " x " + partHeightM * 1000 + " mm";
    }
}
