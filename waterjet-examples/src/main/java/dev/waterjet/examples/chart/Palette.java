package dev.waterjet.examples.chart;

import java.awt.Color;
import java.util.List;
import java.util.Locale;

/**
 * Colours of charts and drawings. The hues are those of Okabe and Ito, which people with any colour vision can
 * distinguish, darkened for thin lines.
 */
public final class Palette {

    static final Color INK = new Color(0x1f2a33);
    static final Color QUIET = new Color(0x5d6b76);
    static final Color GRID = new Color(0xdde3e7);
    static final Color PAPER = new Color(0xfffffe);

    private static final List<Color> SERIES = List.of(
            new Color(0x0062a3),
            new Color(0xc24a00),
            new Color(0x00805c),
            new Color(0x9a4a86),
            new Color(0x8a6d00),
            new Color(0x2f8fc4));

    /** Violet through green to amber: each readable on white and on black. */
    private static final int[] SCALE = {0x6650c0, 0x3b78c4, 0x1f949a, 0x3fa35c, 0x93a021, 0xd08a12};

    private Palette() {}

    static Color series(int index) {
        return SERIES.get(index % SERIES.size());
    }

    /**
     * A colour of a scale from low to high, as {@code #rrggbb}.
     *
     * @param share place on the scale, from 0 to 1; values beyond are cut off
     * @return the colour
     */
    public static String scale(double share) {
        double place = Math.max(0, Math.min(1, share)) * (SCALE.length - 1);
        int low = Math.min((int) place, SCALE.length - 2);
        double part = place - low;
        int mixed = 0;
        for (int shift = 16; shift >= 0; shift -= 8) {
            double from = SCALE[low] >> shift & 0xff;
            double to = SCALE[low + 1] >> shift & 0xff;
            mixed |= (int) Math.round(from + part * (to - from)) << shift;
        }
        return String.format(Locale.ROOT, "#%06x", mixed);
    }
}
