package dev.waterjet.vessel;

/** Ends of a tube under pressure: they decide the axial stress in its wall. */
public enum Ends {
    /** Open ends: the axial force of the pressure is carried by other parts, and the axial stress is 0. */
    OPEN,
    /** Closed ends: the wall carries the force of the pressure on the ends. */
    CLOSED
}
