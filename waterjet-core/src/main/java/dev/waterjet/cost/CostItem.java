package dev.waterjet.cost;

/** What a shop pays for, each with the measure that its price is told in. */
public enum CostItem {
    /** Machine and its attendance, per hour from set-up to the last part. */
    MACHINE("machine and attendance", "hour"),
    /** Water, per cubic metre. */
    WATER("water", "cubic metre"),
    /** Abrasive, per kilogram. */
    ABRASIVE("abrasive", "kilogram"),
    /** Energy from the mains, per kilowatt-hour. */
    ENERGY("energy", "kilowatt-hour"),
    /** Taking the sludge away, per kilogram of it, weighed dry. */
    SLUDGE("sludge", "kilogram"),
    /** Orifices, each. */
    ORIFICE("orifice", "piece"),
    /** Focusing tubes, each. */
    TUBE("focusing tube", "piece"),
    /** Material, per sheet. */
    SHEET("sheet", "piece");

    private final String words;
    private final String measure;

    CostItem(String words, String measure) {
        this.words = words;
        this.measure = measure;
    }

    /**
     * The item in words.
     *
     * @return lower-case words
     */
    public String label() {
        return words;
    }

    /**
     * What the price is told per.
     *
     * @return one word: {@code "hour"}, {@code "kilogram"}
     */
    public String measure() {
        return measure;
    }
}
