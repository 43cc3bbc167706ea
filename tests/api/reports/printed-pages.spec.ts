import type { ChildProcess } from 'node:child_process';
import type { GivenProperty, ReportInput } from '@rillbook/showing/report/report-input.js';
import { writeReport } from '@rillbook/showing/report/write-report.js';
import { afterAll, expect, it } from 'vitest';
import { PrintReport } from '../../../apps/api/src/features/reports/printing/print-report.service.js';
import { inventedReport } from '../../support/invented-report.mjs';
import { pdfPages } from '../../support/pdf-text.mjs';

const printer = new PrintReport();
afterAll(() => printer.onModuleDestroy());

const printed = async (more: Partial<ReportInput>) => pdfPages(await printer.run(writeReport({ ...inventedReport(3), ...more })));

/** A property of which as much is found as a page tells. */
function busy(given: GivenProperty): GivenProperty {
  const finding = {
    ...{ state: 'open', fromOn: '2026-06-02', untilOn: '2026-06-20', litres: 123_456, money: 24 },
    ...{ isTooLittle: false, resolvedWith: null },
  };
  const findings = ['over-programmed', 'unexplained use', 'steady flow', 'off-schedule run', 'over allowance', 'overwatered'].map(
    (kind) => ({
      ...finding,
      id: kind,
      kind,
      zones: ['Clubhouse lawn'],
    }),
  );
  const what = 'The valve of the play lawn closes slowly: its box was opened, cleared of roots and gravel, and the valve was cleaned';
  const order = { id: 'w', kind: 'repair', state: 'done', what, doneOn: '2026-06-20', doneNote: `${what}.`, cost: null, photos: [] };
  return { ...given, findings, work: [order, { ...order, id: 'v', doneNote: null }] };
}

it('keeps what was found, done, saved and recommended on the first page, however much it is', async () => {
  const [given] = inventedReport(3).properties;
  for (const language of ['en', 'es'] as const) {
    const pages = await printed({ language, properties: [busy(given!)], period: { from: '2025-07', until: '2026-06' } });
    expect(pages).toHaveLength(3);
    const words = pages[0]!.lines.map(({ text }) => text).join(' ');
    expect(words).toContain(language === 'en' ? 'What we recommend' : 'Lo que recomendamos');
    expect(words).toContain(language === 'en' ? 'What was done' : 'Lo que se hizo');
  }
});

it('keeps the page of all properties on one page, where it nearly fits', async () => {
  const [given] = inventedReport(3).properties;
  const names = ['Bracken Way Strip', 'Depot Green', 'Piedmont Park', 'Sycamore Library'];
  const properties = names.map((name) => ({ ...busy(given!), id: name, name }));
  const brand = { ...inventedReport(3).brand, contact: 'office@example.test\n1 Long Street\nFennel Hollow\n555-0100' };
  for (const language of ['en', 'es'] as const) {
    const [, second] = await printed({ language, brand, properties, period: { from: '2026-04', until: '2026-06' } });
    expect(
      second!.lines
        .slice(0, 3)
        .map(({ text }) => text)
        .join(' '),
    ).toContain('Bracken Way Strip');
    expect(second!.lines.length).toBeGreaterThan(10);
  }
});

it('breaks a word that is longer than a line, instead of running off the paper', async () => {
  const address = `https://water.example.test/${'averylongplacewithoutaspace'.repeat(8)}`;
  const [first] = await printed({ language: 'en', note: `See ${address} for more.` });
  const beyond = first!.lines.filter(({ right }) => right > first!.width);
  expect(beyond).toEqual([]);
  expect(
    first!.lines
      .map(({ text }) => text)
      .join('')
      .replace(/\s/g, ''),
  ).toContain(address);
});

it('goes on with another typesetter where one ended while nobody printed', async () => {
  await printed({ language: 'en' });
  const { child } = printer as unknown as { child: ChildProcess };
  const ended = new Promise((resolve) => child.once('exit', resolve));
  child.kill('SIGKILL');
  await ended;
  expect(await printed({ language: 'en' })).not.toHaveLength(0);
});
