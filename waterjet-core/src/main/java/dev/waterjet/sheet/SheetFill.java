package dev.waterjet.sheet;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;

/**
 * Equal parts on a sheet, in rows: their number and places.
 *
 * <pre>{@code
 * SheetFill fill = SheetFill.sheet(millimetres(1000), millimetres(500))
 *         .withBorder(millimetres(5))
 *         .withGap(millimetres(3))
 *         .staggered(millimetres(20));
 * fill.parts();
 * }</pre>
 *
 * <p>On a square grid every part has the cell of its bounding box and the gap. On a staggered grid every second row is
 * shifted by half a cell, and rows move together so far that round parts keep the gap to all six neighbours; only round
 * parts gain by it. Rows run in the direction that holds more parts. The gap is the widest kerf, or twice it where each part
 * has its own kerf, and the web between them.
 *
 * <p>A sheet of 500 mm holds 50 by 50 parts at a pitch of 10 mm (common practice: about 2,500 of the smallest parts).
 */
public final class SheetFill implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private static final double MAX_PARTS = 10e6;

    /** Part of a pitch by which a row may overrun, so that 500 mm holds fifty times 10 mm in doubles too. */
    private static final double SLACK = 1e-9;

    /** Direction of rows. */
    public enum Rows {
        /** Rows along the width of the sheet. */
        ALONG_WIDTH,
        /** Rows along the height of the sheet. */
        ALONG_HEIGHT
    }

    /** Checked content, and the serial form. */
    private record Values(Sheet sheet, double partWidthM, double partHeightM, boolean isStaggered)
            implements Serializable {

        Values {
            Objects.requireNonNull(sheet, "sheet");
            partWidthM = fitting("width of the part", partWidthM, sheet.usableWidthM());
            partHeightM = fitting("height of the part", partHeightM, sheet.usableHeightM());
            double across = sheet.usableWidthM() / (partWidthM + sheet.values.gapM);
            double along = sheet.usableHeightM() / (partHeightM + sheet.values.gapM);
            Require.atMost("number of cells on the sheet", across * along, MAX_PARTS, Units.ONE, "");
            if (isStaggered) {
                Require.between(
                        "height of a round part",
                        partHeightM,
                        partWidthM * (1 - SLACK),
                        partWidthM * (1 + SLACK),
                        Units.MILLIMETRE,
                        "a round part is as high as wide; others go on a square grid");
            }
        }

        private static double fitting(String name, double sizeM, double usableM) {
            Require.positive(name, sizeM, Units.MILLIMETRE);
            return Require.atMost(name, sizeM, usableM, Units.MILLIMETRE, "what the sheet leaves within its borders");
        }

        private Object readResolve() {
            return new SheetFill(this);
        }
    }

    /** Sheet with its border and the gap between parts. */
    public static final class Sheet implements Serializable {

        private static final long serialVersionUID = 1L;

        /** Checked content, and the serial form. */
        private record SheetValues(double widthM, double heightM, double borderM, double gapM) implements Serializable {

            SheetValues {
                widthM = Require.positive("width of the sheet", widthM, Units.MILLIMETRE);
                heightM = Require.positive("height of the sheet", heightM, Units.MILLIMETRE);
                borderM = Require.notNegative("border of the sheet", borderM, Units.MILLIMETRE);
                gapM = Require.notNegative("gap between parts", gapM, Units.MILLIMETRE);
            }

            private Object readResolve() {
                return new Sheet(this);
            }
        }

        private final transient SheetValues values;

        private Sheet(SheetValues values) {
            this.values = values;
        }

        /**
         * Returns this sheet with a border to keep free all around.
         *
         * @param border width of the border, 0 or more
         * @return the sheet with that border
         */
        public Sheet withBorder(Quantity<Length> border) {
            Objects.requireNonNull(border, "border");
            return new Sheet(new SheetValues(values.widthM, values.heightM, Kind.LENGTH.si(border), values.gapM));
        }

        /**
         * Returns this sheet with a gap between parts: kerf and web.
         *
         * @param gap the gap, 0 or more
         * @return the sheet with that gap
         */
        public Sheet withGap(Quantity<Length> gap) {
            Objects.requireNonNull(gap, "gap");
            return new Sheet(new SheetValues(values.widthM, values.heightM, values.borderM, Kind.LENGTH.si(gap)));
        }

        /**
         * Fills the sheet with parts on a square grid.
         *
         * @param width width of the bounding box of a part, above 0
         * @param height height of the bounding box of a part, above 0
         * @return the fill
         * @throws dev.waterjet.measure.DomainException if not one part fits within the borders, or more than ten million do
         */
        public SheetFill square(Quantity<Length> width, Quantity<Length> height) {
            Objects.requireNonNull(height, "height");
            Objects.requireNonNull(width, "width");
            return new SheetFill(new Values(this, Kind.LENGTH.si(width), Kind.LENGTH.si(height), false));
        }

        /**
         * Fills the sheet with parts on a square grid, upright or all turned by a quarter, whichever holds more.
         *
         * @param width width of the bounding box of a part, above 0
         * @param height height of the bounding box of a part, above 0
         * @return the fill; {@link SheetFill#partWidth} shows whether the parts are turned
         * @throws dev.waterjet.measure.DomainException if not one part fits either way, or more than ten million do
         */
        public SheetFill squareEitherWay(Quantity<Length> width, Quantity<Length> height) {
            Objects.requireNonNull(height, "height");
            Objects.requireNonNull(width, "width");
            double widthM = Kind.LENGTH.si(width);
            double heightM = Kind.LENGTH.si(height);
            boolean isUpright = widthM <= usableWidthM() && heightM <= usableHeightM();
            if (!isUpright) {
                return heightM <= usableWidthM() && widthM <= usableHeightM()
                        ? square(height, width)
                        : square(width, height);
            }
            SheetFill upright = square(width, height);
            if (heightM > usableWidthM() || widthM > usableHeightM()) {
                return upright;
            }
            SheetFill turned = square(height, width);
            return turned.parts() > upright.parts() ? turned : upright;
        }

        /**
         * Fills the sheet with round parts on a staggered grid, its rows in the direction that holds more.
         *
         * @param diameter diameter of a part, above 0
         * @return the fill
         * @throws dev.waterjet.measure.DomainException if not one part fits within the borders, or more than ten million do
         */
        public SheetFill staggered(Quantity<Length> diameter) {
            Objects.requireNonNull(diameter, "diameter");
            double si = Kind.LENGTH.si(diameter);
            return new SheetFill(new Values(this, si, si, true));
        }

        private double usableWidthM() {
            return values.widthM - 2 * values.borderM;
        }

        private double usableHeightM() {
            return values.heightM - 2 * values.borderM;
        }

        @Override
        public boolean equals(Object other) {
            return other instanceof Sheet that && values.equals(that.values);
        }

        @Override
        public int hashCode() {
            return values.hashCode();
        }

        @Override
        public String toString() {
            return "sheet of " + QuantityText.forPeople(Kind.LENGTH, values.widthM) + " by "
                    + QuantityText.forPeople(Kind.LENGTH, values.heightM);
        }

        private Object writeReplace() {
            return values;
        }

        private void readObject(ObjectInputStream in) throws InvalidObjectException {
            throw new InvalidObjectException("read through its values");
        }
    }

    /** Rows in one direction: along x of their own frame. */
    private record Grid(double spareAlongM, double spareAcrossM, double pitchM, double rowPitchM, boolean isStaggered) {

        int rows() {
            return 1 + fits(spareAcrossM, rowPitchM);
        }

        int inRow(int row) {
            double shift = isStaggered && row % 2 == 1 ? pitchM / 2 : 0;
            return 1 + fits(spareAlongM - shift, pitchM);
        }

        int parts() {
            return (rows() + 1) / 2 * inRow(0) + rows() / 2 * inRow(1);
        }

        /** Number of whole pitches in a length; -1 if the length is negative. */
        private static int fits(double lengthM, double pitchM) {
            double slackM = SLACK * pitchM;
            return lengthM < -slackM ? -1 : (int) Math.floor((lengthM + slackM) / pitchM);
        }
    }

    private final transient Values values;
    private final transient Grid grid;
    private final transient Rows direction;

    private SheetFill(Values values) {
        this.values = values;
        Grid along = grid(Rows.ALONG_WIDTH);
        Grid across = grid(Rows.ALONG_HEIGHT);
        this.direction = across.parts() > along.parts() ? Rows.ALONG_HEIGHT : Rows.ALONG_WIDTH;
        this.grid = direction == Rows.ALONG_WIDTH ? along : across;
    }

    private Grid grid(Rows rows) {
        Sheet sheet = values.sheet;
        double spareX = sheet.usableWidthM() - values.partWidthM;
        double spareY = sheet.usableHeightM() - values.partHeightM;
        double pitchX = values.partWidthM + sheet.values.gapM;
        double pitchY = values.partHeightM + sheet.values.gapM;
        double together = values.isStaggered ? Math.sqrt(3) / 2 : 1;
        return rows == Rows.ALONG_WIDTH
                ? new Grid(spareX, spareY, pitchX, together * pitchY, values.isStaggered)
                : new Grid(spareY, spareX, pitchY, together * pitchX, values.isStaggered);
    }

    /**
     * Returns a sheet, to be filled.
     *
     * @param width its width, above 0
     * @param height its height, above 0
     * @return the sheet, without border and gap
     */
    public static Sheet sheet(Quantity<Length> width, Quantity<Length> height) {
        Objects.requireNonNull(height, "height");
        Objects.requireNonNull(width, "width");
        return new Sheet(new Sheet.SheetValues(Kind.LENGTH.si(width), Kind.LENGTH.si(height), 0, 0));
    }

    /** {@return the number of parts, 1 or more} */
    public int parts() {
        return grid.parts();
    }

    /** {@return the number of rows, 1 or more} */
    public int rows() {
        return grid.rows();
    }

    /** {@return the width of a part as it lies on the sheet} */
    public Quantity<Length> partWidth() {
        return Kind.LENGTH.of(values.partWidthM);
    }

    /** {@return the direction of the rows} */
    public Rows direction() {
        return direction;
    }

    /**
     * {@return the share of the sheet that the parts cover, above 0 to 1: by their bounding boxes on a square grid, by their
     * discs on a staggered one}
     */
    public double coveredShare() {
        double box = values.partWidthM * values.partHeightM;
        double part = values.isStaggered ? box * Math.PI / 4 : box;
        return parts() * part / (values.sheet.values.widthM * values.sheet.values.heightM);
    }

    /** {@return the distance between the middles of two rows, in m} */
    public Quantity<Length> rowPitch() {
        return Kind.LENGTH.of(grid.rowPitchM);
    }

    /** {@return x of the middle of each part from the corner of the sheet, row by row} */
    public QuantityArray<Length> x() {
        return places(direction == Rows.ALONG_WIDTH, values.partWidthM);
    }

    /** {@return y of the middle of each part from the corner of the sheet, row by row} */
    public QuantityArray<Length> y() {
        return places(direction == Rows.ALONG_HEIGHT, values.partHeightM);
    }

    private QuantityArray<Length> places(boolean isAlongRows, double sizeM) {
        double[] places = new double[parts()];
        double first = values.sheet.values.borderM + sizeM / 2;
        int at = 0;
        for (int row = 0; row < grid.rows(); row++) {
            double shift = grid.isStaggered && row % 2 == 1 ? grid.pitchM / 2 : 0;
            int count = grid.inRow(row);
            for (int i = 0; i < count; i++) {
                places[at++] = first + (isAlongRows ? shift + i * grid.pitchM : row * grid.rowPitchM);
            }
        }
        return QuantityArray.ofSi(Kind.LENGTH, places);
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("sheet fill")
                .put("grid", values.isStaggered ? "staggered" : "square")
                .put("parts", parts())
                .put("rows", rows())
                .put("direction", direction)
                .put("row_pitch", Kind.LENGTH, grid.rowPitchM)
                .put("covered_share", coveredShare())
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof SheetFill that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return parts() + " parts in " + rows() + (values.isStaggered ? " staggered" : "") + " rows";
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
