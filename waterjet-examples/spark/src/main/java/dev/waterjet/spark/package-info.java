/**
 * A sweep on a cluster, as an example of the library under Apache Spark.
 *
 * <p>Built under the Maven profile {@code spark} only, so that nobody else downloads Spark:
 *
 * <pre>
 * mvn -B -P spark -pl spark -am verify
 * </pre>
 */
@NullMarked
package dev.waterjet.spark;

import org.jspecify.annotations.NullMarked;
