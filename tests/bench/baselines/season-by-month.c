// The single crop coefficient balance with real watering, as sums by month, in C: the same arithmetic as season-by-month.kernel.ts, one zone
// after the other.
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

typedef struct {
  double kc, taw, raw, rooted, retention, rate, depletion;
} zone;

static double now(void) {
  struct timespec t;
  timespec_get(&t, TIME_UTC);
  return t.tv_sec * 1e3 + t.tv_nsec / 1e6;
}

static void run(const double *eto, const double *rain, const double *minutes, const int *ends, const zone *z, double *out) {
  const double abstraction = 0.2 * z->retention, held = 0.8 * z->retention, span = z->taw - z->raw;
  double depletion = z->depletion;
  int day = 0;
  for (int m = 0; m < 12; m++) {
    double s[8] = {0};
    for (; day < ends[m]; day++) {
      const double etc = z->kc * eto[day];
      double taken = etc;
      if (depletion > z->raw) {
        taken = depletion >= z->taw ? 0 : (z->taw - depletion) / span * etc;
        s[7] += 1;
      }
      double entered = 0;
      if (rain[day] > 0.2 * eto[day]) {
        const double excess = rain[day] - abstraction;
        const double runoff = excess > 0 ? excess * excess / (rain[day] + held) : 0;
        entered = z->rooted * (rain[day] - runoff);
        s[3] += runoff;
        s[2] += entered;
      }
      const double irrigation = minutes[day] * z->rate;
      const double left = depletion - (entered + irrigation) + taken;
      const double drained = left < 0 ? -left : 0, missing = left < 0 ? 0 : left;
      const double shortfall = missing > z->taw ? missing - z->taw : 0;
      depletion = missing - shortfall;
      s[0] += etc;
      s[1] += taken;
      s[4] += irrigation;
      s[5] += drained;
      s[6] += shortfall;
    }
    for (int i = 0; i < 8; i++) out[8 * m + i] = s[i];
  }
}

// stdin: days, zones, runs; eto; rain; 12 ends; three programs of minutes; seven numbers a zone. Prints the sum of all sums and the times.
int main(void) {
  int days, zones, runs, ends[12];
  if (scanf("%d %d %d", &days, &zones, &runs) != 3) return 1;
  double *series = malloc(5 * days * sizeof(double));
  for (int i = 0; i < 2 * days; i++) if (scanf("%lf", &series[i]) != 1) return 1;
  for (int i = 0; i < 12; i++) if (scanf("%d", &ends[i]) != 1) return 1;
  for (int i = 2 * days; i < 5 * days; i++) if (scanf("%lf", &series[i]) != 1) return 1;
  zone *all = malloc(zones * sizeof(zone));
  for (int i = 0; i < 7 * zones; i++) if (scanf("%lf", (double *)all + i) != 1) return 1;
  double *out = malloc(96 * zones * sizeof(double));
  printf("{\"ms\":[");
  for (int r = 0; r < runs; r++) {
    const double begun = now();
    for (int i = 0; i < zones; i++) run(series, series + days, series + (2 + i % 3) * days, ends, &all[i], out + 96 * i);
    printf("%s%.6f", r ? "," : "", now() - begun);
  }
  double sum = 0;
  for (int i = 0; i < 96 * zones; i++) sum += out[i];
  printf("],\"sum\":%.17g}\n", sum);
}
