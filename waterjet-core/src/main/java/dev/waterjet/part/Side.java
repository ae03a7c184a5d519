package dev.waterjet.part;

/** Side of a path, as one looks along it from above. */
public enum Side {
    /** To the left: an arc that turns left runs counter-clockwise. */
    LEFT(1),
    /** To the right: an arc that turns right runs clockwise. */
    RIGHT(-1);

    final int sign;

    Side(int sign) {
        this.sign = sign;
    }

    /** {@return 1 for left, -1 for right: the sign of an angle that turns to this side} */
    public int sign() {
        return sign;
    }

    /** {@return the other side: right for left, left for right} */
    public Side opposite() {
        return this == LEFT ? RIGHT : LEFT;
    }
}
