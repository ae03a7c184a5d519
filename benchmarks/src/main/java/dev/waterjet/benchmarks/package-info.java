/** Benchmarks; each stands beside the same arithmetic on plain doubles. */
package dev.waterjet.benchmarks;
