/**
 * Figures of the guides, and the tests that run the code of the guides.
 *
 * <p>{@link dev.waterjet.docs.Figures} lists the figures of {@code docs/figures}. To add one, write a method that returns
 * a {@link dev.waterjet.docs.Figure} and name it in the list; run {@code Figures} to write the files. A test compares
 * the words and numbers behind each file with those drawn afresh, so that no figure goes stale.
 */
@NullMarked
package dev.waterjet.docs;

import org.jspecify.annotations.NullMarked;
