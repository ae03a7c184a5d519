package dev.waterjet.toolpath;

import java.util.Arrays;

/** Purpose and source of each line and arc of a tool path. */
@SuppressWarnings("EnumOrdinal")
final class Stretches {

    private static final ToolPath.Purpose[] PURPOSES = ToolPath.Purpose.values();

    private byte[] purpose = new byte[16];
    private int[] source = new int[16];
    private double[] start = new double[16];
    private double[] end = new double[16];
    private int size;

    void add(ToolPath.Purpose what, int edge, double from, double to) {
        if (size == source.length) {
            purpose = Arrays.copyOf(purpose, 2 * size);
            source = Arrays.copyOf(source, 2 * size);
            start = Arrays.copyOf(start, 2 * size);
            end = Arrays.copyOf(end, 2 * size);
        }
        purpose[size] = (byte) what.ordinal();
        source[size] = edge;
        start[size] = from;
        end[size++] = to;
    }

    /** Adds a stretch of another's stretch. */
    void addPart(Stretches other, int i, double fromShare, double toShare) {
        double length = other.end[i] - other.start[i];
        add(other.purpose(i), other.source[i], other.start[i] + fromShare * length, other.start[i] + toShare * length);
    }

    void addPart(Stretches other, int i, double fromShare, double toShare, ToolPath.Purpose what) {
        addPart(other, i, fromShare, toShare);
        purpose[size - 1] = (byte) what.ordinal();
    }

    int size() {
        return size;
    }

    ToolPath.Purpose purpose(int i) {
        return PURPOSES[purpose[i]];
    }

    int source(int i) {
        return source[i];
    }

    double start(int i) {
        return start[i];
    }

    double end(int i) {
        return end[i];
    }

    boolean has(ToolPath.Purpose what) {
        for (int i = 0; i < size; i++) {
            if (purpose[i] == what.ordinal()) {
                return true;
            }
        }
        return false;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Stretches that
                && size == that.size
                && Arrays.equals(purpose, 0, size, that.purpose, 0, size)
                && Arrays.equals(source, 0, size, that.source, 0, size)
                && Arrays.equals(start, 0, size, that.start, 0, size)
                && Arrays.equals(end, 0, size, that.end, 0, size);
    }

    @Override
    public int hashCode() {
        int hash = size;
        for (int i = 0; i < size; i++) {
            hash = 31 * hash + purpose[i];
            hash = 31 * hash + source[i];
        }
        return hash;
    }
}
