/**
 * The reference suite: values from outside the project, one row a case, in open files that any language can read.
 *
 * <p>Rows stand in {@code src/test/resources/reference/*.csv} (RFC 4180, UTF-8) with the columns
 *
 * <ul>
 *   <li>{@code id}: unique name of the case;
 *   <li>{@code subject}: what is computed, as registered by a {@link dev.waterjet.reference.Subjects};
 *   <li>{@code inputs}: {@code name=value} pairs with units, parted by semicolons;
 *   <li>{@code expected}: value with unit;
 *   <li>{@code tolerance}: {@code 0.5 %} of the expected value, or an absolute one with its unit; half of the last
 *       printed figure where a source prints figures;
 *   <li>{@code grade}: an {@code EvidenceGrade} name in lower case with hyphens;
 *   <li>{@code source}: where the expected value stands.
 * </ul>
 *
 * <p>A new file of rows is found by itself once it is named in {@link dev.waterjet.reference.ReferenceSuite}; a new
 * subject is a method in the {@code Subjects} class of its package. A number that this code produced is never a
 * reference.
 */
@NullMarked
package dev.waterjet.reference;

import org.jspecify.annotations.NullMarked;
