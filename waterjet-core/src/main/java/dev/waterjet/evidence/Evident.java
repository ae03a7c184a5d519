package dev.waterjet.evidence;

/** Anything that can say what speaks for it. Every empirical model and every catalogued value can. */
public interface Evident {

    /**
     * What speaks for this.
     *
     * @return grade, source, note and ranges
     */
    Evidence evidence();
}
