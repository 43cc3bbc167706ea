// Recall against false alarms as a picture: the product's own points, and the ideal detector's lines for each size.

const [WIDTH, HEIGHT] = [720, 440];
const BOX = { left: 70, right: 560, top: 40, bottom: 380 };
/** False alarms a site-year are drawn on a scale of tenfolds between these. */
const [FEWEST, MOST] = [0.01, 1];
const LABELLED = [0.02, 0.05, 0.1];
const INK = '#1f2a2e';
const FAINT = '#c9d2d4';
const LINE = '#7a8b8f';
const POINT = '#0b6e69';
const PROMISE = '#b4531f';

const x = (alarms) =>
  BOX.left + ((BOX.right - BOX.left) * Math.log10(Math.min(MOST, Math.max(FEWEST, alarms)) / FEWEST)) / Math.log10(MOST / FEWEST);
const y = (recall) => BOX.bottom - (BOX.bottom - BOX.top) * recall;
const at = (value) => value.toFixed(1);
const text = (left, top, words, more = '') => `<text x="${at(left)}" y="${at(top)}" ${more}>${words}</text>`;
const line = (from, to, colour, more = '') =>
  `<line x1="${at(from[0])}" y1="${at(from[1])}" x2="${at(to[0])}" y2="${at(to[1])}" stroke="${colour}" ${more}/>`;

function frame() {
  const ticks = [0.01, 0.03, 0.1, 0.3, 1].flatMap((alarms) => [
    line([x(alarms), BOX.top], [x(alarms), BOX.bottom], FAINT),
    text(x(alarms), BOX.bottom + 18, alarms, 'text-anchor="middle"'),
  ]);
  const levels = [0, 0.2, 0.4, 0.6, 0.8, 1].flatMap((recall) => [
    line([BOX.left, y(recall)], [BOX.right, y(recall)], FAINT),
    text(BOX.left - 8, y(recall) + 4, recall.toFixed(1), 'text-anchor="end"'),
  ]);
  return [
    ...ticks,
    ...levels,
    text((BOX.left + BOX.right) / 2, BOX.bottom + 40, 'false alarms a site-year', 'text-anchor="middle"'),
    text(16, BOX.top - 16, 'recall of unexplained use'),
  ];
}

const linePoints = (floor, recall) => recall.map((value, index) => `${at(x(floor.falseAlarms[index]))},${at(y(value))}`).join(' ');

/** The points that the product is compared with are of all sizes from a tenth on: so is the bold line. */
function idealLines(floor) {
  if (!floor) return [];
  const bold = [
    `<polyline points="${linePoints(floor, floor.fromTenth)}" fill="none" stroke="${INK}" stroke-width="2"/>`,
    text(BOX.right + 8, y(floor.fromTenth.at(-1)) + 4, 'ideal, 10 to 300 %', 'font-weight="bold"'),
  ];
  const single = floor.curve
    .filter(({ share }) => LABELLED.includes(share))
    .flatMap(({ share, recall }) => [
      `<polyline points="${linePoints(floor, recall)}" fill="none" stroke="${LINE}" stroke-dasharray="4 3"/>`,
      text(BOX.right + 8, y(recall.at(-1)) + 4, `ideal, ${Math.round(100 * share)} % of the month`),
    ]);
  return [...bold, ...single];
}

function ownPoints(curve) {
  return curve
    .filter(({ recall, falseAlarmsPerSiteYear }) => recall !== null && falseAlarmsPerSiteYear !== null)
    .map(
      ({ recall, falseAlarmsPerSiteYear, leastConfidence }) =>
        `<circle cx="${at(x(falseAlarmsPerSiteYear))}" cy="${at(y(recall))}" r="4" fill="${POINT}"><title>least confidence ${leastConfidence}</title></circle>`,
    );
}

/** The picture as SVG: points for the product at each least confidence, dashed lines for the floor, the promise as two lines. */
export function curvePicture({ curve, floor }) {
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${HEIGHT}" font-family="sans-serif" font-size="12" fill="${INK}">`,
    `<rect width="${WIDTH}" height="${HEIGHT}" fill="#ffffff"/>`,
    ...frame(),
    line([x(0.1), BOX.top], [x(0.1), BOX.bottom], PROMISE),
    line([BOX.left, y(0.95)], [BOX.right, y(0.95)], PROMISE),
    ...idealLines(floor),
    ...ownPoints(curve),
    '</svg>',
    '',
  ].join('\n');
}
