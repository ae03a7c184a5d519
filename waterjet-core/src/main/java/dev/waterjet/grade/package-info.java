/**
 * How good a cut face is, and what it takes to get it better.
 *
 * <p>{@link dev.waterjet.grade.Iso9013} holds the ranges of ISO 9013 for perpendicularity and mean height of the profile.
 * That standard is made for thermal cutting and holds for waterjet cuts by agreement only.
 */
@NullMarked
package dev.waterjet.grade;

import org.jspecify.annotations.NullMarked;
