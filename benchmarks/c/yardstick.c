/*
 * The outer yardstick: the same arithmetic in C, for a curve of feeds and for the Helmholtz energy of water.
 * Build and run by benchmarks/compare: gcc -O3 yardstick.c -lm
 */
#include <math.h>
#include <stdio.h>
#include <time.h>

enum { POINTS = 10000 };

static double thickness_m[POINTS];
static double feed_m_per_s[POINTS];

/* Feeds of many thicknesses at one index, as MachinabilityKernel.feeds: u = (A / (q h))^1.15. */
static void feeds(double ability, double index) {
    for (int i = 0; i < POINTS; i++) {
        feed_m_per_s[i] = pow(ability / (index * thickness_m[i]), 1.15);
    }
}

static double seconds(void) {
    struct timespec t;
    clock_gettime(CLOCK_MONOTONIC, &t);
    return t.tv_sec + 1e-9 * t.tv_nsec;
}

int main(void) {
    for (int i = 0; i < POINTS; i++) {
        thickness_m[i] = 0.002 + 0.078 * i / (POINTS - 1);
    }
    double best = 1e9;
    double sum = 0;
    for (int round = 0; round < 20; round++) {
        double start = seconds();
        for (int repeat = 0; repeat < 50; repeat++) {
            feeds(0.0005 + 1e-9 * repeat, 3);
            sum += feed_m_per_s[repeat];
        }
        double taken = (seconds() - start) / 50;
        best = taken < best ? taken : best;
    }
    printf("curve of %d feeds in C: %.0f ns (best of 20 rounds; check %g)\n", POINTS, best * 1e9, sum);
    return 0;
}
