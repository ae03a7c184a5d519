package dev.waterjet.program;

/**
 * Form in which a machine takes the dwell after jet on. ISO 6983-1 leaves the word of a dwell to the machine; the forms are
 * common practice, no source.
 */
public enum DwellForm {
    /** {@code G4 P500}: P in milliseconds. */
    P_MILLISECONDS("G4 P ms", 'P', 0.001),
    /** {@code G4 P0.5}: P in seconds. */
    P_SECONDS("G4 P s", 'P', 1),
    /** {@code G4 X0.5}: X in seconds. */
    X_SECONDS("G4 X s", 'X', 1),
    /** {@code G4 F0.5}: F in seconds. */
    F_SECONDS("G4 F s", 'F', 1),
    /** No word: the machine waits by itself after jet on. */
    MACHINE("machine", ' ', 1);

    private final String text;
    final char letter;
    final double unitS;

    DwellForm(String text, char letter, double unitS) {
        this.text = text;
        this.letter = letter;
        this.unitS = unitS;
    }

    /** {@return the text in a file of machine codes, such as {@code G4 P ms}} */
    public String text() {
        return text;
    }
}
