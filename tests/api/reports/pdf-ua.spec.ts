import { deflateSync, inflateSync } from 'node:zlib';
import { writeReport } from '@rillbook/showing/report/write-report.js';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { PrintReport } from '../../../apps/api/src/features/reports/printing/print-report.service.js';
import { inventedReport } from '../../support/invented-report.mjs';
import { pdfUaFaults } from '../../support/pdf/pdf-ua.mjs';

const printer = new PrintReport();
let plain: string;

const printed = async (seed: number, more: object = {}): Promise<Buffer> => printer.run(writeReport({ ...inventedReport(seed), ...more }));
const faultsOf = (pdf: string): readonly string[] => pdfUaFaults(Buffer.from(pdf, 'latin1'));

/** The PDF with something of it written otherwise, as long as before, so that all stays where the table of objects says. */
function altered(found: RegExp, instead: (text: string) => string): string {
  const text = found.exec(plain)?.[0];
  expect(text, String(found)).toBeDefined();
  const other = instead(text!);
  expect(other).toHaveLength(text!.length);
  return plain.replace(found, () => other);
}

/** The PDF with the content of its first page written otherwise. */
function repainted(instead: (content: string) => string): string {
  const streams = [...plain.matchAll(/\/Length (\d+)\s[^>]*>>\s*stream\r?\n/g)];
  for (const { 0: head, 1: length, index } of streams) {
    const at = index + head.length;
    const packed = plain.slice(at, at + Number(length));
    if (!head.includes('FlateDecode')) continue;
    const content = inflateSync(Buffer.from(packed, 'latin1')).toString('latin1');
    if (!/\/MCID 0\s*>>\s*BDC/.test(content)) continue;
    const other = deflateSync(Buffer.from(instead(content), 'latin1'), { level: 9 }).toString('latin1');
    expect(other.length).toBeLessThanOrEqual(packed.length);
    return plain.slice(0, at) + other.padEnd(packed.length, '\0') + plain.slice(at + packed.length);
  }
  throw new Error('no content was found');
}

beforeAll(async () => {
  plain = (await printed(3)).toString('latin1');
});
afterAll(() => printer.onModuleDestroy());

// ISO 14289-1:2014 by the Matterhorn Protocol 1.1, as far as a machine can decide.
describe('a report as PDF/UA-1', () => {
  it('has no fault that a machine can find: one property, several, words in other letters', async () => {
    expect(faultsOf(plain)).toEqual([]);
    expect(pdfUaFaults(await printed(7, { language: 'es' }))).toEqual([]);
    expect(pdfUaFaults(await printed(10, { note: 'Καλημέρα, доброе утро; 水 and 👍.' }))).toEqual([]);
  });

  it.each([
    ['13-004', /\/Alt /, () => '/Alx '],
    ['15-003', /\/Scope \/Column/, () => '/Scopx /Column'],
    ['15-005', /\/Headers \[\(V/, () => '/Headers [(X'],
    ['07-001', /\/DisplayDocTitle/, () => '/DisplayDocTitlx'],
    ['11-006', /\/Lang \(/, () => '/Lanx ('],
    ['UA 7.1: MarkInfo', /\/Marked true/, () => '/Markex true'],
    ['06-002', /<pdfuaid:part>1/, () => '<pdfuaid:part>2'],
    ['06-003', /<dc:title>/, () => '<dc:titlx>'],
    ['14-003', /\/S \/H2/, () => '/S /H4'],
    ['09-005', /\/S \/TH$/m, () => '/S /LI'],
    ['02-001', /\/S \/LBody/, () => '/S /LBodx'],
    ['31-027', /\/ToUnicode/, () => '/ToUnicodx'],
    ['31-004', /\/CIDToGIDMap/, () => '/CIDToGIDMax'],
    ['31-009', /\/FontFile2/, () => '/FontFilx2'],
    ['31-016', /\/W \[0 0 [\d.]+ 1 1 \d/, (text: string) => `${text.slice(0, -1)}${(Number(text.at(-1)) + 2) % 10}`],
    ['piece 15 ', /\/K \[15\]/, () => '/K [99]'],
    ['tree of parents', /\/StructParents 1/, () => '/StructParents 7'],
  ])('is found out where it fails: %s', (says, found, instead) => {
    expect(faultsOf(altered(found, instead)).filter((fault) => new RegExp(says).test(fault))).not.toEqual([]);
  });

  it('is found out where something is painted that is neither tagged nor an artifact, or both', () => {
    const untagged = repainted((content) => content.replace(/\/\w+ <<\s*\/MCID 0\s*>>\s*BDC([\s\S]*?)EMC/, '$1'));
    expect(faultsOf(untagged).join()).toMatch(/01-005/);
    const both = repainted((content) => content.replace(/(\/MCID 0\s*>>\s*BDC)([\s\S]*?)EMC/, '$1 /Artifact BMC $2 EMC EMC'));
    expect(faultsOf(both).join()).toMatch(/01-003/);
  });
});
