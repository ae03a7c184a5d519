/**
 * Generator of the site: the guides as HTML pages that open from disk.
 *
 * <p>{@link dev.waterjet.docs.site.Site} reads the Markdown whose code blocks the build runs, and writes pages with typeset
 * mathematics, coloured code, links into the Javadoc, figures in light and dark, and a full-text search.
 */
@NullMarked
package dev.waterjet.docs.site;

import org.jspecify.annotations.NullMarked;
