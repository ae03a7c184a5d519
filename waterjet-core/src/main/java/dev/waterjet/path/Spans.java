package dev.waterjet.path;

import java.util.Arrays;

/**
 * Stretches of the path, each with one cap of feed, and the nodes between them: flat arrays that grow. An edge is one
 * span, or several where the front recovers on a part of it.
 */
final class Spans {

    int count;
    int[] edge;
    double[] lengthM;
    /** Feed that the cut front allows, and why. */
    double[] frontMPerS;

    byte[] frontLimit;
    /** Feed that the machine allows, and why. */
    double[] machineMPerS;

    byte[] machineLimit;
    double[] accelerationMPerS2;
    /** Feed that the front allows at the start of each span, and at the end of the last. */
    double[] nodeFrontMPerS;

    byte[] nodeLimit;
    double[] nodeMachineMPerS;

    Spans(int room) {
        edge = new int[room];
        lengthM = new double[room];
        frontMPerS = new double[room];
        frontLimit = new byte[room];
        machineMPerS = new double[room];
        machineLimit = new byte[room];
        accelerationMPerS2 = new double[room];
        nodeFrontMPerS = new double[room + 1];
        nodeLimit = new byte[room + 1];
        nodeMachineMPerS = new double[room + 1];
    }

    /** The node at the end of the spans so far. */
    void node(double frontM, byte limit, double machineM) {
        nodeFrontMPerS[count] = frontM;
        nodeLimit[count] = limit;
        nodeMachineMPerS[count] = machineM;
    }

    /** A span after the present node; room for the next node is made. */
    void add(int ofEdge, double length, double front, byte limit, double machine, byte why, double acceleration) {
        if (count == edge.length) {
            grow();
        }
        edge[count] = ofEdge;
        lengthM[count] = length;
        frontMPerS[count] = front;
        frontLimit[count] = limit;
        machineMPerS[count] = machine;
        machineLimit[count] = why;
        accelerationMPerS2[count] = acceleration;
        count++;
    }

    private void grow() {
        int room = count + count / 2 + 16;
        edge = Arrays.copyOf(edge, room);
        lengthM = Arrays.copyOf(lengthM, room);
        frontMPerS = Arrays.copyOf(frontMPerS, room);
        frontLimit = Arrays.copyOf(frontLimit, room);
        machineMPerS = Arrays.copyOf(machineMPerS, room);
        machineLimit = Arrays.copyOf(machineLimit, room);
        accelerationMPerS2 = Arrays.copyOf(accelerationMPerS2, room);
        nodeFrontMPerS = Arrays.copyOf(nodeFrontMPerS, room + 1);
        nodeLimit = Arrays.copyOf(nodeLimit, room + 1);
        nodeMachineMPerS = Arrays.copyOf(nodeMachineMPerS, room + 1);
    }
}
