/**
 * How good a cut face is, and what it takes to get it better.
 *
 * <p>{@link dev.waterjet.grade.Iso9013} holds the ranges of ISO 9013 for perpendicularity and mean height of the profile.
 * That standard is made for thermal cutting and holds for waterjet cuts by agreement only. A
 * {@link dev.waterjet.grade.FaceScale} holds limits that the user supplies.
 *
 * <p>A {@link dev.waterjet.grade.RoughnessModel} follows roughness down the face, from the texture of the grains at the entry
 * to the grooves at the exit. A {@link dev.waterjet.grade.FaceModel} joins it with the walls: it predicts a
 * {@link dev.waterjet.grade.CutFace} and, the other way round, finds the fastest feed that meets a
 * {@link dev.waterjet.grade.FaceDemand}, and which part of it governs. A face that was cut already is read by a
 * {@link dev.waterjet.grade.MeasuredFace}; {@link dev.waterjet.grade.GradeOdds} says how likely each grade is.
 */
@NullMarked
package dev.waterjet.grade;

import org.jspecify.annotations.NullMarked;
