package dev.waterjet.motion;

import java.io.Serializable;

/** Blocks of a plan in flat arrays: what the passes of motion make of {@link Segments}. */
final class MotionProfile implements Serializable {

    private static final long serialVersionUID = 1L;

    final int count;
    /** Edge of each block; empty where each edge is one block. */
    private final int[] edge;

    final double[] lengthM;
    final double[] capMPerS;
    final byte[] limit;
    final double[] accelerationMPerS2;
    final double jerkMPerS3;
    /** Feed at the nodes, one more than blocks. */
    final double[] nodeMPerS;

    /** Feed that a node itself allows, and why. */
    final double[] nodeCapMPerS;

    final byte[] nodeLimit;
    /** Greatest feed within each block. */
    final double[] peakMPerS;

    final double[] timeS;
    /** Time at the cap within each block. */
    final double[] atCapS;

    /** First block of each run, where jerk is limited; else empty. */
    int[] runFirst = {};

    double totalS;

    /** Takes over the arrays of spans; each cap becomes the lower of front and machine. */
    MotionProfile(Segments spans, double jerkMPerS3) {
        this.jerkMPerS3 = jerkMPerS3;
        count = spans.count;
        edge = spans.edge;
        lengthM = spans.lengthM;
        capMPerS = spans.frontMPerS;
        limit = spans.frontLimit;
        accelerationMPerS2 = spans.accelerationMPerS2;
        nodeMPerS = spans.nodeMachineMPerS;
        nodeCapMPerS = spans.nodeFrontMPerS;
        nodeLimit = spans.nodeLimit;
        peakMPerS = spans.machineMPerS;
        timeS = new double[count];
        atCapS = new double[count];
        for (int i = 0; i < count; i++) {
            if (peakMPerS[i] < capMPerS[i]) {
                capMPerS[i] = peakMPerS[i];
                limit[i] = spans.machineLimit[i];
            }
        }
        for (int j = 0; j <= count; j++) {
            if (nodeCapMPerS[j] < nodeMPerS[j]) {
                nodeMPerS[j] = nodeCapMPerS[j];
            } else {
                nodeCapMPerS[j] = nodeMPerS[j];
                nodeLimit[j] = (j == 0 || j == count ? FeedLimit.PATH_END : FeedLimit.CENTRIPETAL).code();
            }
        }
    }

    int edge(int block) {
        return edge.length == 0 ? block : edge[block];
    }

    /** Whether the feed at a node is what the node itself allows, and not only what the blocks beside it do. */
    boolean isHeldByNode(int node) {
        double cap = nodeCapMPerS[node];
        return (node == 0 || cap <= capMPerS[node - 1])
                && (node == count || cap <= capMPerS[node])
                && nodeMPerS[node] >= cap * (1 - 1e-12);
    }
}
