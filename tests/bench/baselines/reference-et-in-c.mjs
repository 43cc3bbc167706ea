// The standardized reference ET of short grass in C, as one would write it there: the days as columns, the sun of the latitude tabulated
// once a station, libm for the rest (ASCE-EWRI 2005, Eq. 1 to 33 with Appendix D).

/** The source of a program over rows of day of the year, Tmax, Tmin, Tdew, wind, its height, Rs, latitude and elevation. */
export function program(rows) {
  const column = (at) => rows.map((row) => row[at]).join(',');
  return `
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>
#define N ${rows.length}
static const int J[N] = {${column(0)}};
static const double TX[N] = {${column(1)}}, TN[N] = {${column(2)}}, TD[N] = {${column(3)}}, UZ[N] = {${column(4)}}, Z[N] = {${column(5)}},
  RS[N] = {${column(6)}}, LAT[N] = {${column(7)}}, ALT[N] = {${column(8)}};
static double ra[N], inverse_sine[N], inverse_power[N], pressure[N], wind_factor[N], eto[N];
static const double PI = 3.14159265358979323846;

static void tabulate(void) {
  for (int i = 0; i < N; i++) {
    double phi = LAT[i] * PI / 180, year = 2 * PI * J[i] / 365, d = 0.409 * sin(year - 1.39);
    double ws = acos(-tan(phi) * tan(d)), sine = sin(0.85 + 0.3 * phi * sin(year - 1.39) - 0.42 * phi * phi);
    if (sine < 0.1) sine = 0.1;
    ra[i] = 24 * 60 / PI * 0.082 * (1 + 0.033 * cos(year)) * (ws * sin(phi) * sin(d) + cos(phi) * cos(d) * sin(ws));
    inverse_sine[i] = 1 / sine;
    inverse_power[i] = pow(sine, -0.4);
    pressure[i] = 101.3 * pow((293 - 0.0065 * ALT[i]) / 293, 5.26);
    wind_factor[i] = 4.87 / log(67.8 * Z[i] - 5.42);
  }
}

static double vapour(double t) { return 0.6108 * exp(17.27 * t / (t + 237.3)); }

static void run(void) {
  for (int i = 0; i < N; i++) {
    double p = pressure[i], g = 0.665e-3 * p, x = TX[i], n = TN[i], ex = vapour(x), en = vapour(n), ea = vapour(TD[i]);
    double kb = 0.98 * exp(-0.00146 * p * inverse_sine[i] - 0.075 * pow(0.14 * ea * p + 2.1, 0.4) * inverse_power[i]);
    double clear = (kb + (kb >= 0.15 ? 0.35 - 0.36 * kb : 0.18 + 0.82 * kb)) * ra[i];
    double ratio = fmin(1, fmax(0.3, RS[i] / clear)), kx = x + 273.16, kn = n + 273.16;
    double emitted = (kx * kx * kx * kx + kn * kn * kn * kn) / 2 * (0.34 - 0.14 * sqrt(ea));
    double rn = 0.77 * RS[i] - 4.901e-9 * emitted * (1.35 * ratio - 0.35), t = (x + n) / 2, q = t + 237.3;
    double slope = 2503 * exp(17.27 * t / q) / (q * q), u = UZ[i] * wind_factor[i];
    double value = (0.408 * slope * rn + g * 900 / (t + 273) * u * ((ex + en) / 2 - ea)) / (slope + g * (1 + 0.34 * u));
    eto[i] = value < 0 ? 0 : value;
  }
}

static int ascending(const void *a, const void *b) {
  double x = *(const double *)a, y = *(const double *)b;
  return x < y ? -1 : x > y;
}

int main(int count, char **arguments) {
  int rounds = count > 1 ? atoi(arguments[1]) : 1;
  double *took = malloc(sizeof(double) * rounds), sum = 0;
  tabulate();
  for (int round = 0; round < rounds; round++) {
    struct timespec begun, ended;
    timespec_get(&begun, TIME_UTC);
    run();
    timespec_get(&ended, TIME_UTC);
    took[round] = (ended.tv_sec - begun.tv_sec) * 1e9 + (ended.tv_nsec - begun.tv_nsec);
  }
  for (int i = 0; i < N; i++) sum += eto[i];
  qsort(took, rounds, sizeof(double), ascending);
  printf("{\\"nanosecondsPerDay\\": %.6f, \\"sum\\": %.12f}", took[rounds / 2] / N, sum);
  return 0;
}
`;
}
