// Healthy meters of all sorts: 15 minutes or an hour, irrigation or mixed, four sizes, three registers.

const RESOLUTIONS = [1, 3.785, 37.85];
const SIZES = [20, 25, 40, 50];

export const healthyWish = (seed) => ({
  seed,
  stepMinutes: seed % 2 ? 15 : 60,
  kind: seed % 3 === 0 ? 'mixed' : 'irrigation',
  resolutionLitres: RESOLUTIONS[(seed >> 1) % 3],
  sizeMm: SIZES[(seed >> 2) % 4],
});
