package dev.waterjet.program;

/** Writes the feed word of a block. */
final class FeedWord {

    private static final double MM_PER_MIN = 60e3;
    private static final double INCH_PER_MIN = 60 / 0.0254;

    private FeedWord() {}

    /** F and the feed in mm/min with one decimal, or in in/min with two; more where a slow feed would lose its figures. */
    static void append(StringBuilder into, double feedMPerS, boolean isInch) {
        double feed = feedMPerS * (isInch ? INCH_PER_MIN : MM_PER_MIN);
        int decimals = isInch ? 2 : 1;
        double scale = isInch ? 100 : 10;
        while (feed * scale < 100 && decimals < 9) {
            scale *= 10;
            decimals++;
        }
        // a feed that is a whole number of steps but for rounding stays that number
        long steps = (long) Math.floor(feed * scale * (1 + 1e-12));
        into.append('F').append(steps / (long) scale);
        long rest = steps % (long) scale;
        if (rest != 0) {
            String digits = Long.toString((long) scale + rest).substring(1);
            into.append('.').append(digits.replaceAll("0+$", ""));
        }
    }
}
