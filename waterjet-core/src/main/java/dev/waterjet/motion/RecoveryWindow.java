package dev.waterjet.motion;

/**
 * The slow places that a walk has passed and that still are within reach, each with the distance walked when it was
 * passed. Their feeds fall with distance: a place is dropped once a nearer one is as slow, so that each is entered and
 * left once.
 */
final class RecoveryWindow {

    private final double longestReachM;
    private double walkedM;
    private double[] placeM = new double[64];
    private double[] feedMPerS = new double[64];
    private int farthest;
    private int end;

    RecoveryWindow(double longestReachM) {
        this.longestReachM = longestReachM;
    }

    double walkedM() {
        return walkedM;
    }

    boolean isEmpty() {
        return farthest == end;
    }

    void walk(double lengthM) {
        walkedM += lengthM;
        while (farthest < end && placeM[farthest] + longestReachM <= walkedM) {
            farthest++;
        }
    }

    /** Enters a slow place where the walk stands. Distances count from the first within reach. */
    void enter(double feed) {
        if (isEmpty()) {
            walkedM = 0;
        }
        while (end > farthest && feedMPerS[end - 1] >= feed) {
            end--;
        }
        if (end == placeM.length) {
            makeRoom();
        }
        placeM[end] = walkedM;
        feedMPerS[end] = feed;
        end++;
    }

    /** The slowest place of which a distance walked is within reach, from a place on; {@link #end} if there is none. */
    int slowest(int from, double atM, double reachM) {
        int place = Math.max(from, farthest);
        while (place < end && placeM[place] + reachM <= atM) {
            place++;
        }
        return place;
    }

    /** Feed of a place; without limit where there is none. */
    double feedMPerS(int place) {
        return place < end ? feedMPerS[place] : Double.POSITIVE_INFINITY;
    }

    double placeM(int place) {
        return placeM[place];
    }

    private void makeRoom() {
        int kept = end - farthest;
        int room = kept > placeM.length / 2 ? 2 * placeM.length : placeM.length;
        double[] places = new double[room];
        double[] feeds = new double[room];
        System.arraycopy(placeM, farthest, places, 0, kept);
        System.arraycopy(feedMPerS, farthest, feeds, 0, kept);
        placeM = places;
        feedMPerS = feeds;
        farthest = 0;
        end = kept;
    }
}
