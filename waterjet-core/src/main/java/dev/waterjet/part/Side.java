package dev.waterjet.part;

/** A side of a path, as one looks along it from above. */
public enum Side {
    /** To the left: an arc that turns left runs counter-clockwise. */
    LEFT(1),
    /** To the right: an arc that turns right runs clockwise. */
    RIGHT(-1);

    public final int sign;

    Side(int sign) {
        this.sign = sign;
    }

    /**
     * The other side.
     *
     * @return right for left, left for right
     */
    public Side opposite() {
        return this == LEFT ? RIGHT : LEFT;
    }
}
