package dev.waterjet.head;

import java.util.Comparator;

/** What heads are ranked by. */
public enum RankBy {
    /** The quickest first; among equals the cheaper one. */
    TIME,
    /** The cheapest first; among equals the quicker one. */
    COST;

    /** Heads alike in both: the one that breaks fewer rules, then that of the list's own order, as sorting is stable. */
    public Comparator<HeadCandidate> order() {
        Comparator<HeadCandidate> byTime = Comparator.comparingDouble(HeadCandidate::timeSi);
        Comparator<HeadCandidate> byCost = Comparator.comparingDouble(HeadCandidate::cost);
        return (this == TIME ? byTime.thenComparing(byCost) : byCost.thenComparing(byTime))
                .thenComparingInt(trial -> trial.jet().cautions().size());
    }
}
