// Holds a PDF to what a machine can decide of PDF/UA-1 (ISO 14289-1:2014), by the failure conditions of the PDF Association's Matterhorn
// Protocol 1.1, whose numbers stand beside each fault (from memory). What only a person can judge (whether words of a figure tell what it
// shows, whether the order of reading is sensible) is not judged here.
import { contentFaults } from './pdf-ua-content.mjs';
import { fontFaults } from './pdf-ua-fonts.mjs';
import { Name, PdfObjects } from './pdf-objects.mjs';
import { structureFaults } from './pdf-ua-structure.mjs';

/**
 * @param {Uint8Array} bytes a PDF with an old-style table of objects
 * @returns {string[]} what is wrong with it; nothing where a machine finds no fault
 */
export function pdfUaFaults(bytes) {
  const pdf = new PdfObjects(bytes);
  const root = pdf.of(pdf.trailer.Root);
  const pages = pagesOf(pdf, pdf.of(root.Pages));
  const contents = contentFaults(pdf, pages);
  return [
    ...documentFaults(pdf, root),
    ...metadataFaults(pdf, root),
    ...annotationFaults(pdf, pages),
    ...contents.faults,
    ...structureFaults(pdf, root, pages, contents.marked),
    ...fontFaults(pdf, contents.shown),
  ];
}

const pagesOf = (pdf, node) => (pdf.of(node.Kids) ? pdf.of(node.Kids).flatMap((kid) => pagesOf(pdf, pdf.of(kid))) : [node]);
const failing = (faults) => faults.filter(([isWrong]) => isWrong).map(([, says]) => says);

/** What stands of the document as a whole. */
function documentFaults(pdf, root) {
  const mark = pdf.of(root.MarkInfo);
  const viewer = pdf.of(root.ViewerPreferences);
  const lang = pdf.of(root.Lang);
  return failing([
    [mark?.Marked !== true, 'UA 7.1: MarkInfo says not that it is tagged'],
    [mark?.Suspects === true, '01-007: Suspects is true'],
    [!pdf.of(root.StructTreeRoot), 'UA 7.1: there is no tree of structure'],
    [!viewer || viewer.DisplayDocTitle === undefined, '07-001: DisplayDocTitle is not there'],
    [viewer?.DisplayDocTitle === false, '07-002: DisplayDocTitle is false'],
    [typeof lang !== 'string' || !/^[a-z]{2,3}(-[A-Za-z0-9]{2,8})*$/.test(lang), '11-006: the document has no language'],
    [pdf.trailer.Encrypt !== undefined, '26-001: it is encrypted'],
    [pdf.of(root.AcroForm)?.XFA !== undefined, '25-001: it has a form of XFA'],
    [root.OCProperties !== undefined, '20-001: it has layers, which are not looked at here'],
    [pdf.of(root.Names)?.EmbeddedFiles !== undefined, '21-001: it has files within, which are not looked at here'],
  ]);
}

function metadataFaults(pdf, root) {
  const metadata = pdf.of(root.Metadata);
  if (!metadata) return ['06-001: there is no metadata'];
  const xmp = Buffer.from(pdf.bytesOf(metadata), 'latin1').toString('utf8');
  const title = /<dc:title>[\s\S]*?<rdf:li[^>]*>([^<]*)<\/rdf:li>/.exec(xmp)?.[1];
  return failing([
    [!/<pdfuaid:part>1<\/pdfuaid:part>/.test(xmp), '06-002: the metadata does not say PDF/UA-1'],
    [!xmp.includes('xmlns:pdfuaid="http://www.aiim.org/pdfua/ns/id/"'), '06-002: the name space of pdfuaid is another'],
    [!title?.trim(), '06-003: the metadata has no title'],
    [!(metadata.Type instanceof Name && metadata.Type.name === 'Metadata'), '06-001: the metadata is not named so'],
  ]);
}

/** Links and notes: each has words, and its page says in which order they are reached. */
function annotationFaults(pdf, pages) {
  return pages.flatMap((page, at) => {
    const notes = (pdf.of(page.Annots) ?? []).map((note) => pdf.of(note)).filter(({ Subtype }) => pdf.of(Subtype)?.name !== 'Popup');
    return [
      ...(notes.length > 0 && pdf.of(page.Tabs)?.name !== 'S' ? [`28-008: page ${at + 1} has links and no order of them`] : []),
      ...notes.flatMap((note) =>
        failing([
          [!pdf.of(note.Contents)?.trim(), `28-004: a link of page ${at + 1} has no words`],
          [note.StructParent === undefined, `28-002: a link of page ${at + 1} is not in the structure`],
        ]),
      ),
    ];
  });
}
