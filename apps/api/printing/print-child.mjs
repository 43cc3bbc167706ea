// Prints water reports in a process of its own: what the typesetter keeps in memory, or dies of, is not the product's.
import { readFileSync, readdirSync } from 'node:fs';
import path from 'node:path';
import { NodeCompiler } from '@myriaddreamin/typst-ts-node-compiler';
import { withRowHeads } from './row-heads.mjs';

const room = import.meta.dirname;
const fonts = path.join(room, 'fonts');
const template = readFileSync(path.join(room, 'report.typ'), 'utf8');
const fontBlobs = readdirSync(fonts)
  .filter((name) => name.endsWith('.ttf'))
  .sort()
  .map((name) => readFileSync(path.join(fonts, name)));
const compiler = NodeCompiler.create({ workspace: room, fontArgs: [{ fontBlobs }] });

/** Drawings bring no font of their own: theirs is the page's. */
const inOurFont = (svg) => svg.replace('<svg ', '<svg font-family="Public Sans" ');

/** Pictures become files of the compiler's own; the model names them. */
function withPictures(report) {
  let count = 0;
  const picture = (dataUrl) => {
    const [, kind, base64] = /^data:image\/(png|jpeg|webp|svg\+xml);base64,(.*)$/s.exec(dataUrl) ?? [];
    if (!kind) throw new Error('a picture is neither PNG, JPEG, WebP nor SVG');
    count += 1;
    const name = `/picture-${count}.${kind === 'svg+xml' ? 'svg' : kind === 'jpeg' ? 'jpg' : kind}`;
    compiler.mapShadow(path.join(room, name), Buffer.from(base64, 'base64'));
    return name;
  };
  const drawn = (drawing) => ({ ...drawing, svg: inOurFont(drawing.svg) });
  const yearOf = (year) => ({ ...year, months: year.months.map((month) => ({ ...month, drawn: drawn(month.drawn) })) });
  const line = (each) => ({ ...each, photos: each.photos.map(({ dataUrl, ...photo }) => ({ ...photo, path: picture(dataUrl) })) });
  return {
    ...report,
    brand: { ...report.brand, logo: report.brand.logo && picture(report.brand.logo) },
    all: report.all && {
      ...report.all,
      gauge: report.all.gauge && drawn(report.all.gauge),
      year: report.all.year && yearOf(report.all.year),
    },
    pages: report.pages.map((page) => ({
      ...page,
      gauge: drawn(page.gauge),
      year: yearOf(page.year),
      sections: page.sections.map((section) => ({ ...section, lines: section.lines.map(line) })),
    })),
  };
}

/** The typesetter's own words, without its places in the template. */
function says(problem) {
  const text = String(problem?.message ?? problem);
  const told = [...text.matchAll(/message: "((?:[^"\\]|\\.)*)"/g)].map(([, words]) =>
    words.replaceAll('\\"', '"').replaceAll('\\\\', '\\'),
  );
  return told.length ? told.join('; ') : text;
}

const UNSHOWN = /the text `"((?:[^"\\]|\\.)+)"` could not be displayed/g;
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what a PDF may not hold
const CONTROLS = /[\u0000-\u0009\u000b-\u001f\u007f-\u009f\ufffe\uffff]/g;
const STAND_IN = '\ufffd';
const MOST_ROUNDS = 5;

/** Prints; letters that no font has give way to a sign that says so, for a name in a rare script must not cost the report. */
function printed(report) {
  const unprinted = new Set();
  let data = JSON.stringify(report, (_, value) => (typeof value === 'string' ? value.toWellFormed().replace(CONTROLS, '') : value));
  for (let round = 1; ; round += 1) {
    try {
      const pdf = withRowHeads(compiler.pdf({ mainFileContent: template, inputs: { report: data } }, { pdfStandard: 'ua-1' }));
      return { pdf, unprinted: [...unprinted].join('') };
    } catch (problem) {
      const letters = new Set([...says(problem).matchAll(UNSHOWN)].flatMap(([, text]) => [...readable(text)]));
      if (letters.size === 0 || round === MOST_ROUNDS) throw problem;
      for (const letter of letters) unprinted.add(letter);
      data = saidSo([...data].map((letter) => (letters.has(letter) ? STAND_IN : letter)).join(''));
    }
  }
}

/** Said at the foot of each page where a letter could not be printed, so that whoever looks at it knows what the sign means. */
const UNPRINTED = {
  en: `Where ${STAND_IN} stands, the report’s letters have no sign for what was written.`,
  es: `Donde está ${STAND_IN}, las letras del informe no tienen signo para lo que se escribió.`,
};

function saidSo(data) {
  const report = JSON.parse(data);
  const words = UNPRINTED[report.language] ?? UNPRINTED.en;
  return report.footer.includes(words) ? data : JSON.stringify({ ...report, footer: `${report.footer} ${words}` });
}

/** What the typesetter writes as \u{200b}. */
const readable = (text) => text.replace(/\\u\{([0-9a-f]+)\}/g, (_, code) => String.fromCodePoint(Number.parseInt(code, 16)));

process.on('message', ({ id, report }) => {
  const begun = process.cpuUsage();
  let answer;
  try {
    answer = { id, ...printed(withPictures(report)) };
  } catch (problem) {
    answer = { id, problem: says(problem) };
  } finally {
    // Without this, memory grows with every report that was ever printed; failures keep theirs too.
    compiler.resetShadow();
    compiler.evictCache(0);
  }
  const { user, system } = process.cpuUsage(begun);
  process.send({ ...answer, rss: process.memoryUsage.rss(), cpuMs: (user + system) / 1000 });
});
process.on('disconnect', () => process.exit(0));
