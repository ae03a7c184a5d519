package dev.waterjet.motion;

/**
 * Holds the feed of a slow place over the lag before and after it, so that the cut front has come up when the head
 * arrives, and does not fall back before the bottom has passed. At each place s the feed is at most the least that the
 * front allows anywhere within one old lag B(s) of it, B being the lag at the feed of the edge's own finish.
 *
 * <p>A walk back looks ahead, then a walk forward looks behind. A span that is slowed as a whole is slowed where it
 * stands; only those that are cut into pieces are laid aside, and put between the others at the end.
 */
final class FrontRecovery {

    /** A piece shorter than this share of the lag is not cut off: the slower feed then holds on all of it. */
    private static final double FINEST_SHARE = 1.0 / 16;

    private static final byte RECOVERY = FeedLimit.FRONT_RECOVERY.code();

    private final Segments spans;
    private final short[] finishOfSpan;
    private final double[] reachM;
    private final double fastestMPerS;
    private final RecoveryWindow slow;
    private final SegmentSplits pieces = new SegmentSplits();

    private FrontRecovery(Segments spans, short[] finishOfSpan, double[] reachM, double fastestMPerS) {
        this.spans = spans;
        this.finishOfSpan = finishOfSpan;
        this.reachM = reachM;
        this.fastestMPerS = fastestMPerS;
        double longest = 0;
        for (double reach : reachM) {
            longest = Math.max(longest, reach);
        }
        this.slow = new RecoveryWindow(longest);
    }

    /**
     * Recovers.
     *
     * @param spans one span for each edge; their feeds are lowered
     * @param finishOfSpan index of the finish of each
     * @param reachM how far slow places reach, by index of the finish
     * @param fastestMPerS the fastest feed of a finish
     * @return these spans, or if some had to be cut into pieces, others
     */
    static Segments recover(Segments spans, short[] finishOfSpan, double[] reachM, double fastestMPerS) {
        FrontRecovery ahead = new FrontRecovery(spans, finishOfSpan, reachM, fastestMPerS);
        ahead.walkBack();
        FrontRecovery behind = new FrontRecovery(spans, finishOfSpan, reachM, fastestMPerS);
        behind.walkForward(ahead.pieces);
        return behind.pieces.count() == 0 ? spans : spans.cutInto(behind.pieces);
    }

    private void walkBack() {
        for (int i = spans.count - 1; i >= 0; i--) {
            enter(spans.nodeFrontMPerS[i + 1]);
            if (isTouched(i)) {
                pass(i, spans.lengthM[i], spans.frontMPerS[i], spans.frontLimit[i], false);
            }
        }
    }

    /** Walks on where a walk back has cut spans into pieces, the last of them first. */
    private void walkForward(SegmentSplits cut) {
        int next = cut.count() - 1;
        int nextCut = next < 0 ? spans.count : cut.span(next);
        for (int i = 0; i < spans.count; i++) {
            enter(spans.nodeFrontMPerS[i]);
            if (i == nextCut) {
                for (; next >= 0 && cut.span(next) == i; next--) {
                    pass(i, cut.lengthM(next), cut.frontMPerS(next), cut.frontLimit(next), true);
                }
                nextCut = next < 0 ? spans.count : cut.span(next);
            } else if (isTouched(i)) {
                pass(i, spans.lengthM[i], spans.frontMPerS[i], spans.frontLimit[i], false);
            }
        }
    }

    private boolean isTouched(int span) {
        return !slow.isEmpty() || spans.frontMPerS[span] < fastestMPerS;
    }

    private void pass(int span, double lengthM, double feed, byte limit, boolean isPiece) {
        slowDown(span, lengthM, feed, limit, isPiece);
        slow.walk(lengthM);
        enter(feed);
    }

    private void enter(double feed) {
        if (feed < fastestMPerS) {
            slow.enter(feed);
        }
    }

    /** Slows a span, or a piece of one, as long as the slow places behind the walk are within reach. */
    private void slowDown(int span, double lengthM, double feed, byte limit, boolean isPiece) {
        double reach = reachM[finishOfSpan[span]];
        double fromM = slow.walkedM();
        double endM = fromM + lengthM;
        double atM = fromM;
        for (int place = slow.slowest(0, atM, reach);
                slow.feedMPerS(place) < feed && atM < endM;
                place = slow.slowest(place, atM, reach)) {
            double untilM = slow.placeM(place) + reach;
            if (endM - untilM < FINEST_SHARE * reach) {
                untilM = endM;
            }
            if (atM == fromM && untilM == endM && !isPiece) {
                spans.frontMPerS[span] = slow.feedMPerS(place);
                spans.frontLimit[span] = RECOVERY;
                return;
            }
            pieces.add(span, atM == fromM && untilM == endM ? lengthM : untilM - atM, slow.feedMPerS(place), RECOVERY);
            atM = untilM;
        }
        if (atM < endM && (isPiece || atM > fromM)) {
            pieces.add(span, atM == fromM ? lengthM : endM - atM, feed, limit);
        }
    }
}
