/**
 * How fast: the question that everything else hangs on.
 *
 * <p>A {@link dev.waterjet.feed.FeedModel} knows one thing about a jet in a material: the feed at which it just separates
 * a depth, and its inverse, the depth that it just separates at a feed. Faces of better quality are cut as if the plate
 * were thicker: at index {@code q} the feed is the one that would just separate {@code q} times the thickness. A
 * {@link dev.waterjet.feed.FaceGrade} is what a drawing asks of a face; an {@link dev.waterjet.feed.IndexTable} ties it
 * to the index.
 *
 * <p>{@link dev.waterjet.feed.MachinabilityFeed} is the model of Zeng, Kim and Wallace. Every model answers with an
 * {@link dev.waterjet.evidence.Estimate}: published feeds of abrasive jets are good to some ten or twenty per cent, not
 * better.
 */
@NullMarked
package dev.waterjet.feed;

import org.jspecify.annotations.NullMarked;
