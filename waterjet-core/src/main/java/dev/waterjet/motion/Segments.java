package dev.waterjet.motion;

/**
 * Stretches of the path, each with one cap of feed, and the nodes between them: flat arrays. An edge is one span, or
 * several where the front recovers on a part of it.
 */
final class Segments {

    final int count;
    /** Edge of each span; empty where each edge is one span. */
    int[] edge = {};

    final double[] lengthM;
    /** Feed that the cut front allows, and why. */
    final double[] frontMPerS;

    final byte[] frontLimit;
    /** Feed that the machine allows, and why. */
    final double[] machineMPerS;

    final byte[] machineLimit;
    final double[] accelerationMPerS2;
    /** Feed that the front allows at the start of each span and at the end of the last, and why. */
    final double[] nodeFrontMPerS;

    final byte[] nodeLimit;
    final double[] nodeMachineMPerS;

    Segments(int count) {
        this.count = count;
        lengthM = new double[count];
        frontMPerS = new double[count];
        frontLimit = new byte[count];
        machineMPerS = new double[count];
        machineLimit = new byte[count];
        accelerationMPerS2 = new double[count];
        nodeFrontMPerS = new double[count + 1];
        nodeLimit = new byte[count + 1];
        nodeMachineMPerS = new double[count + 1];
    }

    void node(int index, double frontM, byte limit, double machineM) {
        nodeFrontMPerS[index] = frontM;
        nodeLimit[index] = limit;
        nodeMachineMPerS[index] = machineM;
    }

    /** These spans, one for each edge, with some of them in pieces. What lies between is copied in one go. */
    Segments cutInto(SegmentSplits pieces) {
        Segments cut = new Segments(count - pieces.spans() + pieces.count());
        cut.edge = new int[cut.count];
        int from = 0;
        int to = 0;
        for (int k = 0; k < pieces.count(); k++) {
            int span = pieces.span(k);
            boolean isFirst = k == 0 || pieces.span(k - 1) != span;
            if (isFirst) {
                copyRange(from, span - from, cut, to);
                to += span - from;
                from = span + 1;
            }
            copyRange(span, 1, cut, to);
            cut.lengthM[to] = pieces.lengthM(k);
            cut.frontMPerS[to] = pieces.frontMPerS(k);
            cut.frontLimit[to] = pieces.frontLimit(k);
            if (!isFirst) {
                cut.node(to, Double.POSITIVE_INFINITY, cut.frontLimit[to], Double.POSITIVE_INFINITY);
            }
            to++;
        }
        copyRange(from, count - from, cut, to);
        cut.node(cut.count, nodeFrontMPerS[count], nodeLimit[count], nodeMachineMPerS[count]);
        return cut;
    }

    /** Copies spans and the nodes at their starts. */
    private void copyRange(int from, int length, Segments other, int to) {
        for (int i = 0; i < length; i++) {
            other.edge[to + i] = from + i;
        }
        System.arraycopy(lengthM, from, other.lengthM, to, length);
        System.arraycopy(frontMPerS, from, other.frontMPerS, to, length);
        System.arraycopy(frontLimit, from, other.frontLimit, to, length);
        System.arraycopy(machineMPerS, from, other.machineMPerS, to, length);
        System.arraycopy(machineLimit, from, other.machineLimit, to, length);
        System.arraycopy(accelerationMPerS2, from, other.accelerationMPerS2, to, length);
        System.arraycopy(nodeFrontMPerS, from, other.nodeFrontMPerS, to, length);
        System.arraycopy(nodeLimit, from, other.nodeLimit, to, length);
        System.arraycopy(nodeMachineMPerS, from, other.nodeMachineMPerS, to, length);
    }
}
