package dev.waterjet.reference;

import java.util.Optional;

/** Computation of one package for rows of cases: see {@link CaseSubjects}. */
@FunctionalInterface
public interface CaseSubject {

    /**
     * Computes the answer to a row.
     *
     * @param row the row
     * @return the answer; empty if this package does not compute what the row is about
     */
    Optional<CaseAnswer> answer(CaseRow row);
}
