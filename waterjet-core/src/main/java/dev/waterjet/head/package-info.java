/** Selection of orifice, focusing tube, abrasive and flow for a part. */
@NullMarked
package dev.waterjet.head;

import org.jspecify.annotations.NullMarked;
