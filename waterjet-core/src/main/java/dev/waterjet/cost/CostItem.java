package dev.waterjet.cost;

/** Items of cost, each with the measure of its price. */
public enum CostItem {
    /** Machine and its attendance, per hour from set-up to the last part. */
    MACHINE("machine and attendance", "hour"),
    /** Water, per cubic metre. */
    WATER("water", "cubic metre"),
    /** Abrasive, per kilogram. */
    ABRASIVE("abrasive", "kilogram"),
    /** Energy from the mains, per kilowatt-hour. */
    ENERGY("energy", "kilowatt-hour"),
    /** Disposal of sludge, per kilogram of dry mass. */
    SLUDGE("sludge", "kilogram"),
    /** Orifices, each. */
    ORIFICE("orifice", "piece"),
    /** Focusing tubes, each. */
    TUBE("focusing tube", "piece"),
    /** Material, per sheet. */
    SHEET("sheet", "piece");

    private final String label;
    private final String measure;

    CostItem(String label, String measure) {
        this.label = label;
        this.measure = measure;
    }

    /**
     * Returns the name of the item.
     *
     * @return name in lower case
     */
    public String label() {
        return label;
    }

    /**
     * Returns the measure of the price.
     *
     * @return one word: {@code "hour"}, {@code "kilogram"}
     */
    public String measure() {
        return measure;
    }
}
