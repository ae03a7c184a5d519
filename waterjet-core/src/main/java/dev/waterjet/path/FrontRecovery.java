package dev.waterjet.path;

/**
 * Holds the feed of a slow place over the lag before and after it, so that the cut front has come up when the head
 * arrives, and does not fall back before the bottom has passed. At each place s the feed is at most the least that the
 * front allows anywhere within one old lag B(s) of it, B being the lag at the feed of the edge's own finish.
 *
 * <p>One walk looks ahead and turns the order round; a second one then looks behind and restores the order. Slower
 * places within reach stand in a queue whose feeds fall with distance, so that each is entered and left once.
 */
final class FrontRecovery {

    /** A piece shorter than this share of the lag is not split off: the slower feed then holds on all of it. */
    private static final double FINEST_SHARE = 1.0 / 16;

    private static final byte RECOVERY = FeedLimit.FRONT_RECOVERY.code();

    private final Spans in;
    private final Spans out;
    private final short[] finishOfEdge;
    private final double[] reachM;
    private final double longestReachM;

    /** Slow places: distance walked and feed, nearest last. */
    private double[] placeM = new double[64];

    private double[] feedMPerS = new double[64];
    private int farthest;
    private int nearest = -1;

    private FrontRecovery(Spans in, int room, short[] finishOfEdge, double[] reachM) {
        this.in = in;
        this.out = new Spans(room);
        this.finishOfEdge = finishOfEdge;
        this.reachM = reachM;
        double longest = 0;
        for (double reach : reachM) {
            longest = Math.max(longest, reach);
        }
        this.longestReachM = longest;
    }

    static Spans recover(Spans spans, short[] finishOfEdge, double[] reachM) {
        if (isFine(spans, finishOfEdge, reachM)) {
            new FrontRecovery(spans, 0, finishOfEdge, reachM).lower();
            return spans;
        }
        int room = spans.count + spans.count / 8 + 16;
        Spans turned = new FrontRecovery(spans, room, finishOfEdge, reachM).walk();
        return new FrontRecovery(turned, room, finishOfEdge, reachM).walk();
    }

    /** Whether no span is long enough to be split. */
    private static boolean isFine(Spans spans, short[] finishOfEdge, double[] reachM) {
        for (int i = 0; i < spans.count; i++) {
            if (spans.lengthM[i] >= FINEST_SHARE * reachM[finishOfEdge[spans.edge[i]]]) {
                return false;
            }
        }
        return true;
    }

    /** Lowers the feeds of spans that are not split where they stand: back, looking ahead, then forward, looking behind. */
    private void lower() {
        int n = in.count;
        double walkedM = 0;
        for (int i = n - 1; i >= 0; i--) {
            enter(walkedM, in.nodeFrontMPerS[i + 1]);
            double own = in.frontMPerS[i];
            lower(i, walkedM);
            walkedM += in.lengthM[i];
            enter(walkedM, own);
            forget(walkedM);
        }
        farthest = 0;
        nearest = -1;
        walkedM = 0;
        for (int i = 0; i < n; i++) {
            enter(walkedM, in.nodeFrontMPerS[i]);
            double own = in.frontMPerS[i];
            lower(i, walkedM);
            walkedM += in.lengthM[i];
            enter(walkedM, own);
            forget(walkedM);
        }
    }

    private void lower(int span, double fromM) {
        double reach = reachM[finishOfEdge[in.edge[span]]];
        int place = farthest;
        while (place <= nearest && placeM[place] + reach <= fromM) {
            place++;
        }
        if (place <= nearest && feedMPerS[place] < in.frontMPerS[span]) {
            in.frontMPerS[span] = feedMPerS[place];
            in.frontLimit[span] = RECOVERY;
        }
    }

    private Spans walk() {
        double walkedM = 0;
        out.node(in.nodeFrontMPerS[in.count], in.nodeLimit[in.count], in.nodeMachineMPerS[in.count]);
        for (int i = in.count - 1; i >= 0; i--) {
            enter(walkedM, in.nodeFrontMPerS[i + 1]);
            split(i, walkedM);
            walkedM += in.lengthM[i];
            enter(walkedM, in.frontMPerS[i]);
            out.node(in.nodeFrontMPerS[i], in.nodeLimit[i], in.nodeMachineMPerS[i]);
            forget(walkedM);
        }
        return out;
    }

    private void split(int span, double fromM) {
        double reach = reachM[finishOfEdge[in.edge[span]]];
        double feed = in.frontMPerS[span];
        double endM = fromM + in.lengthM[span];
        double atM = fromM;
        int place = farthest;
        while (atM < endM) {
            while (place <= nearest && placeM[place] + reach <= atM) {
                place++;
            }
            if (place > nearest || feedMPerS[place] >= feed) {
                emit(span, atM == fromM ? in.lengthM[span] : endM - atM, feed, in.frontLimit[span]);
                break;
            }
            double untilM = placeM[place] + reach;
            if (endM - untilM < FINEST_SHARE * reach) {
                untilM = endM;
            }
            double length = atM == fromM && untilM == endM ? in.lengthM[span] : untilM - atM;
            emit(span, length, feedMPerS[place], RECOVERY);
            if (untilM < endM) {
                out.node(Double.POSITIVE_INFINITY, RECOVERY, Double.POSITIVE_INFINITY);
            }
            atM = untilM;
        }
    }

    private void emit(int span, double length, double feed, byte limit) {
        out.add(
                in.edge[span],
                length,
                feed,
                limit,
                in.machineMPerS[span],
                in.machineLimit[span],
                in.accelerationMPerS2[span]);
    }

    private void enter(double atM, double feed) {
        if (feed == Double.POSITIVE_INFINITY) {
            return;
        }
        while (nearest >= farthest && feedMPerS[nearest] >= feed) {
            nearest--;
        }
        nearest++;
        if (nearest == placeM.length) {
            makeRoom();
        }
        placeM[nearest] = atM;
        feedMPerS[nearest] = feed;
    }

    private void forget(double walkedM) {
        while (farthest <= nearest && placeM[farthest] + longestReachM <= walkedM) {
            farthest++;
        }
        if (farthest > nearest) {
            farthest = 0;
            nearest = -1;
        }
    }

    private void makeRoom() {
        int kept = nearest - farthest;
        int room = kept > placeM.length / 2 ? 2 * placeM.length : placeM.length;
        double[] places = new double[room];
        double[] feeds = new double[room];
        System.arraycopy(placeM, farthest, places, 0, kept);
        System.arraycopy(feedMPerS, farthest, feeds, 0, kept);
        placeM = places;
        feedMPerS = feeds;
        farthest = 0;
        nearest = kept;
    }
}
