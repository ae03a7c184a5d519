package dev.waterjet.kerf;

/** A cut so thin or slow that the jet does not trail. */
enum NoLag implements LagFunction {
    INSTANCE;

    @Override
    public double lagSi(double feedMPerS) {
        return 0;
    }

    @Override
    public double feedSi(double lagM) {
        return Double.POSITIVE_INFINITY;
    }
}
