/** Requirements on a cut surface: cut quality, quality index, tolerance classes of ISO 9013. */
@NullMarked
package dev.waterjet.quality;

import org.jspecify.annotations.NullMarked;
