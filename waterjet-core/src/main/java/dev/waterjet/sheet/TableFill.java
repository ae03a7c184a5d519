package dev.waterjet.sheet;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;

/**
 * Equal parts on a sheet, in rows: how many there are and where each lies.
 *
 * <p>On a square grid every part has the cell of its bounding box and the gap. On a staggered grid every second row is
 * shifted by half a cell, and rows move together so far that round parts keep the gap to all six neighbours; only round
 * parts gain by it. The gap is the widest kerf, or twice it where each part has a kerf of its own, and the web between them.
 *
 * <p>A sheet of 500 mm holds 50 by 50 parts at a pitch of 10 mm (common practice: about 2,500 of the smallest parts).
 */
public final class TableFill implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private final SheetRoom room;
    private final boolean isStaggered;
    private final int rows;
    private final int evenRow;
    private final int oddRow;
    private final double rowPitchM;

    private TableFill(SheetRoom room, boolean isStaggered, double rowPitchM) {
        this.room = room;
        this.isStaggered = isStaggered;
        this.rowPitchM = rowPitchM;
        this.rows = 1 + TableKernel.fits(room.usableHeightSi() - room.partHeightSi(), rowPitchM);
        double spare = room.usableWidthSi() - room.partWidthSi();
        this.evenRow = 1 + TableKernel.fits(spare, room.pitchXSi());
        this.oddRow = isStaggered ? 1 + TableKernel.fits(spare - room.pitchXSi() / 2, room.pitchXSi()) : evenRow;
    }

    /**
     * Parts on a square grid.
     *
     * @param room sheet, part, border and gap
     * @return the fill
     */
    public static TableFill square(SheetRoom room) {
        return new TableFill(room, false, room.pitchYSi());
    }

    /**
     * Round parts on a staggered grid.
     *
     * @param room sheet, part, border and gap; the part as wide as high
     * @return the fill
     * @throws dev.waterjet.measure.DomainException if the part is not as wide as high
     */
    public static TableFill staggered(SheetRoom room) {
        Require.between(
                "height of a round part",
                room.partHeightSi(),
                room.partWidthSi() * (1 - 1e-9),
                room.partWidthSi() * (1 + 1e-9),
                Units.MILLIMETRE,
                "a round part is as high as wide; others go on a square grid");
        return new TableFill(room, true, room.pitchXSi() * Math.sqrt(3) / 2);
    }

    /**
     * How many parts there are.
     *
     * @return the count, 1 or more
     */
    public int parts() {
        return (rows + 1) / 2 * evenRow + rows / 2 * oddRow;
    }

    /**
     * How many rows there are.
     *
     * @return the count, 1 or more
     */
    public int rows() {
        return rows;
    }

    /**
     * Share of the sheet that the parts cover: by their bounding boxes on a square grid, by their discs on a staggered one.
     *
     * @return share above 0 to 1
     */
    public double coveredShare() {
        double box = room.partWidthSi() * room.partHeightSi();
        double part = isStaggered ? box * Math.PI / 4 : box;
        return parts() * part / (room.sheetWidthSi() * room.sheetHeightSi());
    }

    /**
     * Distance between the centres of two rows.
     *
     * @return the pitch, in m
     */
    public Quantity<Length> rowPitch() {
        return Kind.LENGTH.of(rowPitchM);
    }

    /**
     * Where the parts lie, row by row: the first coordinates of their bounding boxes' centres from the sheet's corner.
     *
     * @return one for each part
     */
    public QuantityArray<Length> x() {
        double[] x = new double[parts()];
        int at = 0;
        for (int row = 0; row < rows; row++) {
            double shift = isStaggered && row % 2 == 1 ? room.pitchXSi() / 2 : 0;
            for (int i = 0; i < inRow(row); i++) {
                x[at++] = room.borderSi() + room.partWidthSi() / 2 + shift + i * room.pitchXSi();
            }
        }
        return QuantityArray.ofSi(Kind.LENGTH, x);
    }

    /**
     * Where the parts lie, row by row: the second coordinates of their bounding boxes' centres from the sheet's corner.
     *
     * @return one for each part
     */
    public QuantityArray<Length> y() {
        double[] y = new double[parts()];
        int at = 0;
        for (int row = 0; row < rows; row++) {
            for (int i = 0; i < inRow(row); i++) {
                y[at++] = room.borderSi() + room.partHeightSi() / 2 + row * rowPitchM;
            }
        }
        return QuantityArray.ofSi(Kind.LENGTH, y);
    }

    private int inRow(int row) {
        return row % 2 == 0 ? evenRow : oddRow;
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("table fill")
                .put("grid", isStaggered ? "staggered" : "square")
                .put("parts", parts())
                .put("rows", rows)
                .put("row_pitch", Kind.LENGTH, rowPitchM)
                .put("covered_share", coveredShare())
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof TableFill that && room.equals(that.room) && isStaggered == that.isStaggered;
    }

    @Override
    public int hashCode() {
        return Objects.hash(room, isStaggered);
    }

    @Override
    public String toString() {
        return parts() + " parts in " + rows + (isStaggered ? " staggered" : "") + " rows";
    }
}
