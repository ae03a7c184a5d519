package dev.waterjet.evidence;

/** Model or value with evidence: every empirical model and every catalogued value. */
public interface HasEvidence {

    /** {@return the evidence for this model or value: grade, source, note and ranges} */
    Evidence evidence();
}
