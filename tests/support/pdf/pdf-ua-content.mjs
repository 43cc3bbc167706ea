import { Name, operatorsOf } from './pdf-objects.mjs';

const PAINTS = new Set(['f', 'F', 'f*', 'B', 'B*', 'b', 'b*', 'S', 's', 'sh']);
const SHOWS = new Set(['Tj', 'TJ', "'", '"']);

/**
 * Walks the contents of all pages and of the forms that they show: everything that is painted is tagged or an artifact.
 *
 * @returns faults; `marked`, for each page its marked pieces by number; `shown`, the glyph codes that each font shows
 */
export function contentFaults(pdf, pages) {
  const found = { faults: [], marked: pages.map(() => new Set()), shown: new Map() };
  for (const [at, page] of pages.entries()) {
    const content = [pdf.of(page.Contents)]
      .flat()
      .map((part) => pdf.bytesOf(pdf.of(part)))
      .join('\n');
    walk(pdf, { found, at, content, resources: resourcesOf(pdf, page), around: [], isForm: false });
  }
  return { ...found, faults: [...new Set(found.faults)] };
}

/** A page without resources of its own has those above it. */
const resourcesOf = (pdf, page) => pdf.of(page.Resources) ?? (page.Parent ? resourcesOf(pdf, pdf.of(page.Parent)) : {});

function walk(pdf, { found, at, content, resources, around, isForm }) {
  const say = (fault) => found.faults.push(`${fault} (page ${at + 1})`);
  const stack = [...around];
  const fonts = [];
  let font = null;
  for (const { operator, operands } of operatorsOf(content)) {
    if (operator === 'BMC' || operator === 'BDC')
      stack.push(begun(pdf, { operands, resources, stack, say, isForm, marked: found.marked[at] }));
    else if (operator === 'EMC') {
      if (stack.length === around.length) say('a marked piece ends that never began');
      else stack.pop();
    } else if (operator === 'q') fonts.push(font);
    else if (operator === 'Q') font = fonts.pop() ?? null;
    else if (operator === 'Tf') font = pdf.of(pdf.of(resources.Font)?.[operands[0].name]);
    else if (PAINTS.has(operator) || SHOWS.has(operator) || operator === 'Do') {
      if (stack.length === 0) say(`01-005: ${operator} paints what is neither tagged nor an artifact`);
      if (SHOWS.has(operator)) keepShown(found.shown, font, operands, say);
      if (operator === 'Do') walkForm(pdf, { found, at, around: stack, resources, operands, say });
    }
  }
  if (stack.length !== around.length) say('a marked piece has no end');
}

/** What begins here: an artifact, a piece of the structure, or a note within one of them. */
function begun(pdf, { operands, resources, stack, say, isForm, marked }) {
  const [tag, given] = operands;
  const properties = given instanceof Name ? pdf.of(pdf.of(resources.Properties)?.[given.name]) : given;
  const mcid = pdf.of(properties?.MCID);
  const kind = tag.name === 'Artifact' ? 'artifact' : mcid === undefined ? 'note' : 'tagged';
  if (kind === 'artifact' && stack.includes('tagged')) say('01-003: an artifact within what is tagged');
  if (kind === 'tagged' && stack.includes('artifact')) say('01-004: something tagged within an artifact');
  if (kind === 'tagged' && stack.includes('tagged')) say('something tagged within what is tagged');
  if (kind === 'tagged' && isForm) say('30-002: a form with pieces of the structure of its own');
  if (kind === 'tagged' && marked.has(mcid)) say(`the number ${mcid} marks two pieces`);
  if (kind === 'tagged') marked.add(mcid);
  return kind === 'note' && stack.length === 0 ? 'untagged' : kind;
}

function walkForm(pdf, { found, at, around, resources, operands, say }) {
  const form = pdf.of(pdf.of(resources.XObject)?.[operands[0].name]);
  if (form?.Ref) say('30-001: a form that refers to another file');
  if (pdf.of(form?.Subtype)?.name !== 'Form') return;
  walk(pdf, { found, at, content: pdf.bytesOf(form), resources: pdf.of(form.Resources) ?? resources, around, isForm: true });
}

/** Codes of two bytes: all fonts of the typesetter are composite. */
function keepShown(shown, font, operands, say) {
  if (!font) return say('letters are shown without a font');
  const codes = shown.get(font) ?? new Set();
  for (const piece of operands.flat())
    if (typeof piece === 'string')
      for (let at = 0; at + 1 < piece.length; at += 2) codes.add(piece.charCodeAt(at) * 256 + piece.charCodeAt(at + 1));
  shown.set(font, codes);
}
