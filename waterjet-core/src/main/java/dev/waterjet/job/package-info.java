/**
 * From a part to a job: how to pierce, which head, what it uses up and wears out, how many parts a sheet holds, what it
 * costs.
 *
 * <p>{@link dev.waterjet.job.Piercing} chooses how the jet first goes through a plate, by its
 * {@linkplain dev.waterjet.material.MaterialClass trait}, its thickness and the pressure that stands in a blind hole;
 * {@link dev.waterjet.job.PierceLaw} says how long that takes.
 *
 * <p>{@link dev.waterjet.job.HeadSelector} tries every head of a {@link dev.waterjet.job.HeadList} on what a part asks and
 * says why each fails. {@link dev.waterjet.job.PartPlanner} brings feed along the contours, pierces and moves together.
 *
 * <p>{@link dev.waterjet.job.Consumption} and {@link dev.waterjet.job.Stores} count water, abrasive, energy and sludge;
 * {@link dev.waterjet.job.WearPart} and {@link dev.waterjet.job.TubeWear} say when orifice and focusing tube are to be
 * changed. {@link dev.waterjet.job.TableFill} lays equal parts on a sheet. {@link dev.waterjet.job.Batch} brings these
 * together with the shop's {@link dev.waterjet.job.Rates} and answers with time and cost, how sure they are, and which
 * input that hangs on most.
 *
 * <p>Lives, efficiencies and pierce times are the softest numbers of the library. Each says what speaks for it, and each can
 * be replaced by the shop's own.
 */
@NullMarked
package dev.waterjet.job;

import org.jspecify.annotations.NullMarked;
