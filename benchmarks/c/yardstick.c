/*
 * The outer yardstick: the same arithmetic in C, for a curve of feeds and for a state of water from density and
 * temperature. The curve is a loop over libm's pow; the state is IAPWS-95 as Iapws95Kernel and Iapws95CriticalKernel have
 * it, term for term, with the constants printed from those classes. Before it is timed it must give four states of table 7
 * of IAPWS R6-95(2018) to all printed digits; otherwise the program ends with status 1.
 *
 * Built and run by benchmarks/compare: gcc -O3 -I (folder of iapws95.h) yardstick.c -lm
 */
#include <math.h>
#include <stdio.h>
#include <string.h>
#include <time.h>

#include "iapws95.h"

#define LENGTH(array) ((int) (sizeof(array) / sizeof((array)[0])))

enum { POINTS = 10000, STATES = 1000, ROUNDS = 4000 };

static double thickness_m[POINTS];
static double feed_m_per_s[POINTS];

/* Feeds of many thicknesses at one index, as MachinabilityKernel.feeds: u = (A / (q h))^1.15. */
static void feeds(double ability, double index) {
    for (int i = 0; i < POINTS; i++) {
        feed_m_per_s[i] = pow(ability / (index * thickness_m[i]), 1.15);
    }
}

/* phi0 and phir with their logarithmic derivatives, as the fields of Iapws95Kernel. */
typedef struct {
    double delta, tau;
    double delta_power[LENGTH(DELTA_EXPONENT)], tau_power[LENGTH(TAU_EXPONENT)];
    double ideal, ideal_t, ideal_tt;
    double r, r_d, r_dd, r_t, r_tt, r_dt;
} sheet;

typedef struct {
    double pressure_pa, enthalpy, entropy, c_p, c_v, sound_speed, compressibility, expansion;
} state;

static void fill_powers(sheet *s) {
    double power = 1;
    for (int i = 1; i < LENGTH(DELTA_EXPONENT); i++) {
        power *= s->delta;
        s->delta_power[i] = power;
    }
    double *p = s->tau_power;
    double half = sqrt(s->tau), quarter = sqrt(half), eighth = sqrt(quarter);
    p[0] = 1 / half;
    p[1] = quarter * eighth;
    p[2] = half;
    p[3] = half * quarter;
    p[4] = half * quarter * eighth;
    power = 1;
    for (int i = 0; i < CHAIN; i++) {
        power *= s->tau;
        p[ROOTS + i] = power;
    }
    int one = ROOTS - 1, next = ROOTS + CHAIN;
    double to22 = p[one + 11] * p[one + 11], to23 = p[one + 11] * p[one + 12];
    p[next] = p[one + 8] * p[one + 8];
    p[next + 1] = to22;
    p[next + 2] = to23;
    p[next + 3] = to22 * to22;
    p[next + 4] = to23 * to23;
    p[next + 5] = to22 * to22 * p[one + 6];
}

static void add_group(sheet *s, int from, int to, double k, int c, double exponential) {
    double sum = 0, sum_d = 0, sum_dd = 0, sum_t = 0, sum_tt = 0, sum_dt = 0;
    for (int i = from; i < to; i++) {
        double term = N[i] * s->delta_power[DELTA_SLOT[i]] * s->tau_power[TAU_SLOT[i]];
        double term_d = term * D[i], term_t = term * T[i];
        sum += term;
        sum_d += term_d;
        sum_dd += term_d * D[i];
        sum_t += term_t;
        sum_tt += term_t * T[i];
        sum_dt += term_d * T[i];
    }
    s->r += exponential * sum;
    s->r_d += exponential * (sum_d - k * sum);
    s->r_dd += exponential * (sum_dd - (2 * k + 1) * sum_d + k * (k + 1 - c) * sum);
    s->r_t += exponential * sum_t;
    s->r_tt += exponential * (sum_tt - sum_t);
    s->r_dt += exponential * (sum_dt - k * sum_t);
}

static void add_gauss(sheet *s) {
    double delta = s->delta, tau = s->tau;
    double from_density = GAUSS_ALPHA * (delta - 1) * (delta - 1);
    for (int i = 0; i < LENGTH(GAUSS_N); i++) {
        double away = tau - GAUSS_GAMMA[i];
        double exponent = from_density + GAUSS_BETA[i] * away * away;
        if (exponent > NEGLIGIBLE) {
            continue;
        }
        double term = GAUSS_N[i] * delta * delta * delta * pow(tau, GAUSS_T[i]) * exp(-exponent);
        double d = GAUSS_D - 2 * GAUSS_ALPHA * delta * (delta - 1);
        double t = GAUSS_T[i] - 2 * GAUSS_BETA[i] * tau * away;
        s->r += term;
        s->r_d += term * d;
        s->r_dd += term * (d * d - GAUSS_D - 2 * GAUSS_ALPHA * delta * delta);
        s->r_t += term * t;
        s->r_tt += term * (t * t - GAUSS_T[i] - 2 * GAUSS_BETA[i] * tau * tau);
        s->r_dt += term * d * t;
    }
}

static void add_critical(sheet *s) {
    double delta = s->delta, tau = s->tau, off = delta - 1, x = off * off, cold = tau - 1;
    double A = CRITICAL_A, B = CRITICAL_B, a = CRITICAL_SMALL_A, beta = CRITICAL_BETA;
    if (CRITICAL_C[0] * x + CRITICAL_D[0] * cold * cold > NEGLIGIBLE) {
        return;
    }
    double x_half_beta = pow(x, 1 / (2 * beta)), x_half_beta_less = pow(x, 1 / (2 * beta) - 1), x_a_less = pow(x, a - 1);
    double theta = -cold + A * x_half_beta;
    double distance = theta * theta + B * x_a_less * x;
    if (distance == 0) {
        return;
    }
    double per_off = A * theta * 2 / beta * x_half_beta_less + 2 * B * a * x_a_less;
    double distance_d = off * per_off;
    double distance_dd = per_off + 4 * B * a * (a - 1) * x_a_less
            + 2 * (A / beta) * (A / beta) * x_half_beta_less * x_half_beta
            + A * theta * 4 / beta * (1 / (2 * beta) - 1) * x_half_beta_less;
    for (int i = 0; i < LENGTH(CRITICAL_N); i++) {
        double b = CRITICAL_SMALL_B[i], c = CRITICAL_C[i], d = CRITICAL_D[i], n = CRITICAL_N[i];
        double power = pow(distance, b);
        double less = b * power / distance, less_less = (b - 1) * less / distance;
        double power_d = less * distance_d;
        double power_dd = less * distance_dd + less_less * distance_d * distance_d;
        double power_t = -2 * theta * less;
        double power_tt = 2 * less + 4 * theta * theta * less_less;
        double power_dt = -A * 2 / beta * less * off * x_half_beta_less - 2 * theta * less_less * distance_d;
        double psi = exp(-c * x - d * cold * cold);
        double psi_d = -2 * c * off * psi, psi_dd = (2 * c * x - 1) * 2 * c * psi;
        double psi_t = -2 * d * cold * psi, psi_tt = (2 * d * cold * cold - 1) * 2 * d * psi;
        double psi_dt = 4 * c * d * off * cold * psi, grown = psi + delta * psi_d;
        s->r += n * power * delta * psi;
        s->r_d += n * delta * (power * grown + power_d * delta * psi);
        s->r_dd += n * delta * delta
                * (power * (2 * psi_d + delta * psi_dd) + 2 * power_d * grown + power_dd * delta * psi);
        s->r_t += n * delta * tau * (power_t * psi + power * psi_t);
        s->r_tt += n * delta * tau * tau * (power_tt * psi + 2 * power_t * psi_t + power * psi_tt);
        s->r_dt += n * delta * tau
                * (power * (psi_t + delta * psi_dt) + delta * power_d * psi_t + power_t * grown + power_dt * delta * psi);
    }
}

static void add_ideal(sheet *s) {
    s->ideal = log(s->delta) + IDEAL_1 + IDEAL_2 * s->tau + IDEAL_3 * log(s->tau);
    s->ideal_t = IDEAL_2 * s->tau + IDEAL_3;
    s->ideal_tt = -IDEAL_3;
    for (int i = 0; i < LENGTH(IDEAL_N); i++) {
        double x = IDEAL_GAMMA[i] * s->tau;
        if (x > NOT_EXCITED) {
            break;
        }
        double decay = exp(-x);
        double planck = x * decay / (1 - decay);
        s->ideal += IDEAL_N[i] * log(1 - decay);
        s->ideal_t += IDEAL_N[i] * planck;
        s->ideal_tt -= IDEAL_N[i] * planck * (x + planck);
    }
}

/* A whole state, as Water.atDensitySi gives it; its checks of stability are left out. */
static state water(double temperature_k, double density) {
    sheet s;
    memset(&s, 0, sizeof s);
    s.delta = density / CRITICAL_DENSITY_KG_PER_M3;
    s.tau = CRITICAL_TEMPERATURE_K / temperature_k;
    fill_powers(&s);
    for (int group = 0; group < LENGTH(GROUP_C); group++) {
        int c = GROUP_C[group];
        double power = c == 0 ? 0 : s.delta_power[c];
        if (power < NEGLIGIBLE_GROUP[group]) {
            add_group(&s, GROUP_START[group], GROUP_START[group + 1], c * power, c, c == 0 ? 1 : exp(-power));
        }
    }
    add_gauss(&s);
    add_critical(&s);
    add_ideal(&s);
    double r = GAS_CONSTANT_J_PER_KG_K, rt = r * temperature_k;
    double by_density = rt * (1 + 2 * s.r_d + s.r_dd), by_temperature = density * r * (1 + s.r_d - s.r_dt);
    state w;
    w.pressure_pa = density * rt * (1 + s.r_d);
    w.enthalpy = rt * (1 + s.ideal_t + s.r_t + s.r_d);
    w.entropy = r * (s.ideal_t + s.r_t - s.ideal - s.r);
    w.c_v = -r * (s.ideal_tt + s.r_tt);
    w.c_p = w.c_v + temperature_k * (by_temperature / density) * (by_temperature / density) / by_density;
    w.sound_speed = sqrt(by_density * w.c_p / w.c_v);
    w.compressibility = 1 / (density * by_density);
    w.expansion = by_temperature * w.compressibility;
    return w;
}

static int wrong(const char *what, double temperature_k, double computed, double published, double half_a_digit) {
    if (fabs(computed - published) <= half_a_digit) {
        return 0;
    }
    printf("%s at %g K is %.12g; table 7 of IAPWS R6-95(2018) has %.12g\n", what, temperature_k, computed, published);
    return 1;
}

/* Dense water, steam, water beside the critical point, and hot dense water: each group of terms counts in one of them. */
static int wrong_states(void) {
    static const struct {
        double temperature_k, density, pressure_mpa, half_a_digit_mpa, c_v, sound_speed, half_a_digit_m_per_s, entropy;
    } table_7[] = {
        {300, 1188.202, 700.004704, 5e-7, 3.46135580, 2443.57992, 5e-6, 0.132609616},
        {500, 4.532, 0.999938125, 5e-10, 1.66991025, 535.739001, 5e-7, 6.82502725},
        {647, 358, 22.0384756, 5e-8, 6.18315728, 252.145078, 5e-7, 4.32092307},
        {900, 870.769, 700.000006, 5e-7, 2.66422350, 2019.33608, 5e-6, 4.17223802},
    };
    int faults = 0;
    for (int i = 0; i < LENGTH(table_7); i++) {
        double t = table_7[i].temperature_k;
        state w = water(t, table_7[i].density);
        faults += wrong("pressure in MPa", t, w.pressure_pa / 1e6, table_7[i].pressure_mpa, table_7[i].half_a_digit_mpa);
        faults += wrong("c_v in kJ/(kg K)", t, w.c_v / 1e3, table_7[i].c_v, 5e-9);
        faults += wrong("sound speed in m/s", t, w.sound_speed, table_7[i].sound_speed, table_7[i].half_a_digit_m_per_s);
        faults += wrong("entropy in kJ/(kg K)", t, w.entropy / 1e3, table_7[i].entropy, 5e-9);
    }
    return faults;
}

static double curve(int round) {
    feeds(0.0005 + 1e-9 * round, 3);
    return feed_m_per_s[round % POINTS];
}

static double states(int round) {
    double sum = 0;
    for (int i = 0; i < STATES; i++) {
        state w = water(293.15 + 1e-4 * i + 1e-7 * round, 1129.057);
        sum += w.enthalpy + w.sound_speed + w.compressibility + w.expansion + w.entropy + w.pressure_pa;
    }
    return sum / STATES;
}

static double seconds(void) {
    struct timespec t;
    clock_gettime(CLOCK_MONOTONIC, &t);
    return t.tv_sec + 1e-9 * t.tv_nsec;
}

static void report(const char *what, double (*work)(int), int of_each) {
    double best = 1e9, sum = 0;
    for (int round = 0; round < ROUNDS; round++) {
        double start = seconds();
        sum += work(round);
        double taken = seconds() - start;
        best = taken < best ? taken : best;
    }
    printf("%s in C: %.0f ns (best of %d rounds; check %g)\n", what, best * 1e9 / of_each, ROUNDS, sum / ROUNDS);
}

int main(void) {
    if (wrong_states() > 0) {
        return 1;
    }
    for (int i = 0; i < POINTS; i++) {
        thickness_m[i] = 0.002 + 0.078 * i / (POINTS - 1);
    }
    report("curve of 10000 feeds", curve, 1);
    report("state of water", states, STATES);
    return 0;
}
