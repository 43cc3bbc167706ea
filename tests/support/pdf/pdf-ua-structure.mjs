import { Name } from './pdf-objects.mjs';

/** The types of structure that PDF 1.7 knows (ISO 32000-1:2008, 14.8.4). */
const STANDARD = new Set(
  'Document Part Art Sect Div BlockQuote Caption TOC TOCI Index NonStruct Private P H H1 H2 H3 H4 H5 H6 L LI Lbl LBody Table TR TH TD THead TBody TFoot Span Quote Note Reference BibEntry Code Link Annot Ruby RB RT RP Warichu WT WP Figure Formula Form'.split(
    ' ',
  ),
);
/** Which kids some types may have, and within what some may stand (14.8.4.3). */
const KIDS = {
  Table: ['TR', 'THead', 'TBody', 'TFoot', 'Caption'],
  THead: ['TR'],
  TBody: ['TR'],
  TFoot: ['TR'],
  TR: ['TH', 'TD'],
  L: ['LI', 'L', 'Caption'],
  LI: ['Lbl', 'LBody'],
};
const WITHIN = {
  TR: ['Table', 'THead', 'TBody', 'TFoot'],
  TH: ['TR'],
  TD: ['TR'],
  THead: ['Table'],
  TBody: ['Table'],
  TFoot: ['Table'],
  LI: ['L'],
  Lbl: ['LI', 'Note', 'TOCI', 'BibEntry', 'Reference', 'Span', 'Div'],
  LBody: ['LI'],
};

/** Everything that can be said of the tree of structure: its types, its pieces, and that every piece that is painted stands in it once. */
export function structureFaults(pdf, root, pages, marked) {
  const tree = pdf.of(root.StructTreeRoot);
  if (!tree) return [];
  const roles = pdf.of(tree.RoleMap) ?? {};
  const faults = new Set();
  const elements = [];
  const collect = (value, parent) => {
    const element = pdf.of(value);
    if (!element || typeof element !== 'object' || !(pdf.of(element.S) instanceof Name)) return;
    const type = standardOf(pdf, roles, pdf.of(element.S).name, faults);
    if (pdf.of(element.P) !== (parent?.element ?? tree)) faults.add(`an element of type ${type} names another parent`);
    const found = { element, type, parent, kids: [], pieces: [] };
    elements.push(found);
    parent?.kids.push(found);
    for (const kid of [pdf.of(element.K) ?? []].flat()) {
      const piece = pieceOf(pdf, kid, element);
      if (piece) found.pieces.push(piece);
      else collect(kid, found);
    }
  };
  for (const kid of [pdf.of(tree.K) ?? []].flat()) collect(kid, null);
  if (elements.length === 0) faults.add('the tree of structure is empty');
  for (const element of elements) for (const fault of elementFaults(pdf, element)) faults.add(fault);
  for (const fault of [
    ...headingFaults(elements),
    ...tableFaults(pdf, tree, elements),
    ...pieceFaults(pdf, { tree, elements, pages, marked }),
    ...languageFaults(pdf, elements),
  ])
    faults.add(fault);
  return [...faults];
}

/** The standard type for which a type stands. */
function standardOf(pdf, roles, type, faults) {
  if (STANDARD.has(type) && roles[type]) faults.add(`02-004: the standard type ${type} is mapped to another`);
  const seen = new Set();
  let now = type;
  while (!STANDARD.has(now)) {
    if (seen.has(now)) faults.add(`02-003: ${type} is mapped in a circle`);
    const to = pdf.of(roles[now]);
    if (seen.has(now) || !to) {
      faults.add(`02-001: ${type} is mapped to no standard type`);
      return type;
    }
    seen.add(now);
    now = to.name;
  }
  return now;
}

/** A marked piece of a page: its number, or a dictionary that names its page too. */
function pieceOf(pdf, kid, element) {
  if (typeof kid === 'number') return { page: pdf.of(element.Pg), mcid: kid };
  const value = pdf.of(kid);
  return pdf.of(value?.Type)?.name === 'MCR' ? { page: pdf.of(value.Pg ?? element.Pg), mcid: pdf.of(value.MCID) } : null;
}

function elementFaults(pdf, { element, type, parent, kids }) {
  const faults = [];
  const words = [element.Alt, element.ActualText].map((value) => pdf.of(value)).filter((value) => value?.trim());
  if (type === 'Figure' && words.length === 0) faults.push('13-004: a figure has no words');
  if (type === 'Formula' && words.length === 0) faults.push('17-002: a formula has no words');
  if (type === 'Note' && !pdf.of(element.ID)) faults.push('19-003: a note has no name');
  const allowed = KIDS[type];
  for (const kid of kids) if (allowed && !allowed.includes(kid.type)) faults.push(`09-005: ${kid.type} within ${type}`);
  if (WITHIN[type] && !WITHIN[type].includes(parent?.type)) faults.push(`09-005: ${type} within ${parent?.type ?? 'the root'}`);
  if (type === 'Table' && !hasBelow(kids, 'TR')) faults.push('09-004: a table has no rows');
  return faults;
}

const hasBelow = (kids, type) => kids.some((kid) => kid.type === type || hasBelow(kid.kids, type));

/** Headings begin at the first level and leave none out; they are numbered or not, not both. */
function headingFaults(elements) {
  const types = elements.map(({ type }) => type).filter((type) => /^H\d?$/.test(type));
  const levels = types.filter((type) => type !== 'H').map((type) => Number(type.slice(1)));
  const faults = [];
  if (levels.length && levels[0] !== 1) faults.push(`14-002: the first heading is of level ${levels[0]}`);
  levels.forEach((level, at) => {
    if (at > 0 && level > levels[at - 1] + 1) faults.push(`14-003: a heading of level ${level} after one of level ${levels[at - 1]}`);
  });
  if (types.includes('H') && levels.length) faults.push('14-007: headings with and without a level');
  return faults;
}

const attributesOf = (pdf, { element }) => [pdf.of(element.A) ?? []].flat().map((one) => pdf.of(one));
const attribute = (pdf, cell, name) =>
  attributesOf(pdf, cell)
    .map((one) => pdf.of(one?.[name]))
    .find((value) => value !== undefined);
const below = (found) => found.kids.flatMap((kid) => [kid, ...below(kid)]);

/** Every cell has heads that can be found: by a scope, or by names that lead to heads of the same table. */
function tableFaults(pdf, tree, elements) {
  const named = namesOf(pdf, pdf.of(tree.IDTree));
  return elements
    .filter(({ type }) => type === 'Table')
    .flatMap((table) => {
      const cells = below(table).filter(({ type }) => type === 'TH' || type === 'TD');
      const heads = new Map(cells.flatMap((cell) => (cell.type === 'TH' && cell.element.ID ? [[pdf.of(cell.element.ID), cell]] : [])));
      const faults = [];
      for (const [id, { element }] of heads) if (named.get(id) !== element) faults.push(`the head ${id} is not found by its name`);
      for (const cell of cells) {
        const pointed = attribute(pdf, cell, 'Headers') ?? [];
        for (const id of pointed)
          if (!heads.has(pdf.of(id))) faults.push(`15-005: a cell names the head ${pdf.of(id)}, which its table has not`);
        const scope = attribute(pdf, cell, 'Scope')?.name;
        if (cell.type === 'TH' && !['Row', 'Column', 'Both'].includes(scope))
          faults.push('15-003: a head of a table does not say of what it is one');
        if (cell.type === 'TD' && pointed.length === 0 && !cells.some(({ type }) => type === 'TH'))
          faults.push('15-005: a cell has no heads');
      }
      if (columnsOf(pdf, table).size > 1) faults.push('09-004: the rows of a table have not equally many cells');
      return faults;
    });
}

const columnsOf = (pdf, table) =>
  new Set(
    below(table)
      .filter(({ type }) => type === 'TR')
      .map(({ kids }) => kids.reduce((sum, cell) => sum + (attribute(pdf, cell, 'ColSpan') ?? 1), 0)),
  );

function namesOf(pdf, node) {
  if (!node) return new Map();
  const list = pdf.of(node.Names) ?? [];
  const own = list.flatMap((name, at) => (at % 2 ? [] : [[pdf.of(name), pdf.of(list[at + 1])]]));
  return new Map([...own, ...(pdf.of(node.Kids) ?? []).flatMap((kid) => [...namesOf(pdf, pdf.of(kid))])]);
}

/** Every marked piece stands once in the tree, and leads back to where it stands. */
function pieceFaults(pdf, { tree, elements, pages, marked }) {
  const faults = [];
  const parents = numbersOf(pdf, pdf.of(tree.ParentTree));
  const placed = pages.map(() => new Map());
  for (const { element, pieces } of elements)
    for (const { page, mcid } of pieces) {
      const at = pages.indexOf(page);
      if (at < 0 || !marked[at].has(mcid)) faults.push(`the structure holds a piece ${mcid} that no page has`);
      else if (placed[at].has(mcid)) faults.push(`the piece ${mcid} of page ${at + 1} stands twice in the structure`);
      else placed[at].set(mcid, element);
    }
  for (const [at, page] of pages.entries()) {
    const list = pdf.of(parents.get(pdf.of(page.StructParents))) ?? null;
    if (marked[at].size && !Array.isArray(list)) faults.push(`page ${at + 1} is not in the tree of parents`);
    for (const mcid of marked[at]) {
      if (!placed[at].has(mcid)) faults.push(`01-005: the piece ${mcid} of page ${at + 1} is not in the structure`);
      else if (Array.isArray(list) && pdf.of(list[mcid]) !== placed[at].get(mcid))
        faults.push(`the tree of parents leads piece ${mcid} of page ${at + 1} elsewhere`);
    }
  }
  return faults;
}

function numbersOf(pdf, node) {
  if (!node) return new Map();
  const list = pdf.of(node.Nums) ?? [];
  const own = list.flatMap((number, at) => (at % 2 ? [] : [[number, list[at + 1]]]));
  return new Map([...own, ...(pdf.of(node.Kids) ?? []).flatMap((kid) => [...numbersOf(pdf, pdf.of(kid))])]);
}

const languageFaults = (pdf, elements) =>
  elements.some(({ element }) => element.Lang !== undefined && !String(pdf.of(element.Lang)).trim())
    ? ['11-002: a language without a name']
    : [];
