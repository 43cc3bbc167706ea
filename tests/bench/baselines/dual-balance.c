// The dual crop coefficient balance in C (FAO-56, Eq. 69 to 88): the same arithmetic as dual-balance.kernel.ts.
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

typedef struct {
  double tew, rew, aw, p, mulch, retention, rise, surface, root, wetted, planting, watering;
} zone;

static double now(void) {
  struct timespec t;
  timespec_get(&t, TIME_UTC);
  return t.tv_sec * 1e3 + t.tv_nsec / 1e6;
}

static void run(int days, const double *water, const double *canopy, const zone *z, double *out) {
  const double *eto = water, *rain = water + days, *irrigation = water + 2 * days, *share = water + 3 * days;
  const double *kcb = canopy, *kcmax = canopy + days, *cover = canopy + 2 * days, *depth = canopy + 3 * days;
  double surface = z->surface, root = z->root, wetted = z->wetted;
  const double aw = z->aw / 1000, abstraction = 0.2 * z->retention, slowing = z->tew - z->rew;
  for (int d = 0; d < days; d++) {
    if (irrigation[d] > 0) wetted = share[d];
    else if (rain[d] >= 3) wetted = 1;
    const double bare = 1 - cover[d];
    double exposed = bare < wetted ? bare : wetted;
    if (exposed < 0.01) exposed = 0.01;
    const double kr = surface <= z->rew ? 1 : surface >= z->tew ? 0 : (z->tew - surface) / slowing;
    const double drying = kr * (kcmax[d] - kcb[d]), energy = exposed * kcmax[d];
    const double ke = z->mulch * (drying < energy ? drying : energy), e = ke * eto[d];
    const double excess = rain[d] - abstraction;
    const double ro = excess > 0 ? excess * excess / (rain[d] + 0.8 * z->retention) : 0;
    const double in = rain[d] - ro, wetting = in + (irrigation[d] > 0 ? irrigation[d] / wetted : 0);
    const double dpe = wetting > surface ? wetting - surface : 0;
    surface = surface - wetting + e / exposed + dpe;
    surface = surface > z->tew ? z->tew : surface < 0 ? 0 : surface;
    const double taw = aw * depth[d], unadjusted = z->p + 0.04 * (5 - (ke + kcb[d]) * eto[d]);
    const double raw = (unadjusted > 0.8 ? 0.8 : unadjusted < 0.1 ? 0.1 : unadjusted) * taw;
    const double ks = root <= raw ? 1 : root >= taw ? 0 : (taw - root) / (taw - raw);
    const double t = ks * kcb[d] * eto[d], used = e + t, received = in + irrigation[d] + z->rise;
    const double below = received - used - root, dp = below > 0 ? below : 0;
    const double end = root - received + used + dp, positive = end < 0 ? 0 : end;
    root = positive > taw ? taw : positive;
    out[d] = e;
    out[days + d] = t;
    out[2 * days + d] = dp;
    out[3 * days + d] = ro;
    out[4 * days + d] = surface;
    out[5 * days + d] = root;
    out[6 * days + d] = positive > taw ? positive - taw : 0;
  }
}

static int ascending(const void *a, const void *b) {
  const double x = *(const double *)a, y = *(const double *)b;
  return (x > y) - (x < y);
}

int main(int argc, char **argv) {
  double head[2];
  FILE *file = argc > 2 ? fopen(argv[1], "rb") : NULL;
  if (!file || fread(head, sizeof(double), 2, file) != 2) return 1;
  const int zones = (int)head[0], days = (int)head[1], runs = atoi(argv[2]);
  double *waters = malloc(sizeof(double) * 12 * days), *canopies = malloc(sizeof(double) * 12 * days), *out = malloc(sizeof(double) * 7 * days);
  zone *all = malloc(sizeof(zone) * zones);
  double *took = malloc(sizeof(double) * runs), sum = 0;
  if (fread(waters, sizeof(double), 12 * days, file) != (size_t)(12 * days)) return 1;
  if (fread(canopies, sizeof(double), 12 * days, file) != (size_t)(12 * days)) return 1;
  if (fread(all, sizeof(zone), zones, file) != (size_t)zones) return 1;
  for (int r = -2; r < runs; r++) {
    const double begun = now();
    sum = 0;
    for (int i = 0; i < zones; i++) {
      run(days, waters + 4 * days * (int)all[i].watering, canopies + 4 * days * (int)all[i].planting, &all[i], out);
      for (int d = 0; d < 4 * days; d++) sum += out[d];
    }
    if (r >= 0) took[r] = now() - begun;
  }
  qsort(took, runs, sizeof(double), ascending);
  printf("{\"ms\": %.6f, \"sum\": %.17g}\n", took[runs / 2], sum);
  return 0;
}
