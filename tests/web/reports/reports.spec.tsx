import { cleanup, screen, within } from '@testing-library/react';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { CompanyMonthPage } from '../../../apps/web/src/features/reports/company/CompanyMonthPage.js';
import { ReportsPage } from '../../../apps/web/src/features/reports/ReportsPage.js';
import { BrandPage } from '../../../apps/web/src/features/setup/brand/BrandPage.js';
import { drawPage } from '../support/draw-page.js';

afterEach(cleanup);

const mail = (id: string, state: string, more: object = {}) => ({
  id,
  recipient: `${id}@example.test`,
  state,
  answer: null,
  attempts: 1,
  nextTryAt: '2026-09-03T17:05:00Z',
  ...more,
});
const report = (id: string, state: string, more: object = {}) => ({
  id,
  version: 1,
  clientId: 'c1',
  propertyId: null,
  fromOn: '2026-08-01',
  untilOn: '2026-08-31',
  state,
  note: null,
  unprinted: '',
  sendAt: null,
  sentAt: state === 'sent' ? '2026-09-03T17:00:00Z' : null,
  approvedVersion: state === 'draft' ? null : 'f00d',
  mails: [],
  stoppedAddresses: [],
  links: [],
  content: { title: 'Water report, August 2026', verdict: 'In August 2026, Quail Commons took 393,000 gal.', dataVersion: 'abc' },
  ...more,
});
const portfolio = { month: '2026-09', months: ['2026-07', '2026-08', '2026-09'], through: '2026-09-23' };

const page = (reports: readonly object[], more: Record<string, unknown> = {}, at = '/reports', language: 'en' | 'es' = 'en') =>
  drawPage(<ReportsPage />, {
    at,
    language,
    route: '/reports',
    answers: {
      waterReports: ({ ids }: { ids?: readonly string[] }) => reports.filter((each) => !ids || ids.includes((each as { id: string }).id)),
      clients: [{ id: 'c1', name: 'Quail Commons HOA', emails: ['board@example.test'] }],
      properties: [{ id: 'p1', name: 'Quail Commons', client: { id: 'c1' } }],
      portfolio,
      clientQuestions: [],
      reportMailing: { hasServer: true, hasLinks: true },
      jobs: [],
      ...more,
    },
  });

describe('the reports of a month', () => {
  it('begins with the newest month that is over, and drafts it for all', async () => {
    const { user, calls } = page([], { draftReports: { id: 'j1' } });
    await user.click(await screen.findByRole('button', { name: 'Draft the month for all clients' }));
    expect(calls.find(({ name }) => name === 'DraftReports')?.variables).toEqual({ fromOn: '2026-08-01', untilOn: '2026-08-31' });
  });

  it('approves the drafts among those chosen, and sends those that are approved', async () => {
    const { user, calls } = page([report('r1', 'draft'), report('r2', 'approved', { propertyId: 'p1' })], {
      approveReports: { id: 'j1' },
      sendReports: [{ id: 'r2', state: 'approved', sendAt: null }],
    });
    await user.click(await screen.findByRole('checkbox', { name: 'Choose all' }));
    await user.click(screen.getByRole('button', { name: 'Look at the draft and approve it' }));
    // Nothing is approved before it was shown, and only what was shown.
    const look = within(await screen.findByRole('region', { name: 'What the draft says now' }));
    expect(calls.some(({ name }) => name === 'ApproveReports')).toBe(false);
    expect((await look.findByRole('listitem')).textContent).toMatch(
      /^Quail Commons HOA In August 2026, Quail Commons took 393,000 gal\. PDF data version abc/,
    );
    await user.click(look.getByRole('button', { name: 'Approve this one' }));
    expect(calls.find(({ name }) => name === 'ApproveReports')?.variables).toEqual({ ids: ['r1'], dataVersions: ['abc'] });
    await vi.waitFor(() => expect(document.activeElement?.textContent).toMatch(/^2 reports chosen/));
    await user.type(screen.getByLabelText(/^Send on/), '2026-10-01');
    await user.click(screen.getByRole('button', { name: 'Send it in the morning of that day' }));
    expect(calls.find(({ name }) => name === 'SendReports')?.variables).toEqual({ ids: ['r2'], onDay: '2026-10-01' });
  });

  it('shows the drafts by their clients’ names, whatever the order of the server', async () => {
    const { user } = page([report('r1', 'draft', { clientId: 'c2' }), report('r2', 'draft')], {
      clients: [
        { id: 'c2', name: 'Willow Bend', emails: [] },
        { id: 'c1', name: 'Alder Row', emails: [] },
      ],
    });
    await user.click(await screen.findByRole('checkbox', { name: 'Choose all' }));
    await user.click(screen.getByRole('button', { name: 'Look at 2 drafts and approve them' }));
    const look = within(await screen.findByRole('region', { name: 'What the 2 drafts say now' }));
    const lines = await look.findAllByRole('listitem');
    expect(lines.map(({ textContent }) => textContent?.slice(0, 5))).toEqual(['Alder', 'Willo']);
  });

  it('tells in the person’s language how work ended; what failed is not hidden by what came after it', async () => {
    const refused = [
      { client: 'Heron Flats', code: 'REPORT_FIGURES_CHANGED' },
      { client: 'Old Mill', code: 'A_NEW_ONE' },
    ];
    const job = { done: 2, total: 2, state: 'done' };
    const jobs = [
      {
        ...job,
        id: 'j3',
        kind: 'send report',
        says: '1 of 2 mails sent',
        outcome: { code: 'mailed', details: { sent: 1, total: 2, open: 1 } },
      },
      {
        ...job,
        id: 'j2',
        kind: 'approve reports',
        says: '?',
        outcome: { code: 'approved', details: { approved: 3, total: 5, skipped: 0, refused } },
      },
      { ...job, id: 'j1', kind: 'draft reports', says: '2 drafts made', outcome: { code: 'drafted', details: { made: 2, there: 0 } } },
    ];
    page([], { jobs });
    expect(await screen.findByText(/One mail was sent, of 2; one is tried again\./)).toBeTruthy();
    expect(screen.getByText(/3 were approved, of 5\./)).toBeTruthy();
    expect(screen.getByText('Heron Flats: its figures have changed since they were looked at. Look again.')).toBeTruthy();
    expect(screen.getByText('Old Mill: open it to see why.')).toBeTruthy();
    expect(screen.queryByText(/drafts were made/)).toBeNull();
  });

  it('tells of what begins later until when it waits, and of work that failed in the person’s language', async () => {
    const waits = { id: 'j2', kind: 'send report', state: 'queued', done: 0, total: 3, waitsUntil: '2026-09-01T14:00:00Z' };
    const outcome = { code: 'REPORT_WITHOUT_PROPERTY', details: { client: 'Heron Flats' } };
    const failed = { id: 'j1', kind: 'approve reports', state: 'failed', done: 0, total: 0, says: 'Heron Flats has no property.', outcome };
    page([], { jobs: [waits, failed] }, '/reports', 'es');
    expect(await screen.findByText(/^Envío: esperan 3 hasta /)).toBeTruthy();
    expect(screen.queryByRole('progressbar')).toBeNull();
    expect(screen.getByText(/Heron Flats no tiene ninguna propiedad en uso/)).toBeTruthy();
    expect(screen.queryByText(/has no property/)).toBeNull();
  });

  it('does not call sent what lies in the outbox folder', async () => {
    const mails = [mail('bo', 'sent', { answer: 'in-outbox: m1.eml' })];
    page([report('r0', 'sent', { sentAt: '2026-09-01T14:00:00Z', mails })]);
    expect(await screen.findByText('1 in the outbox folder')).toBeTruthy();
    expect(screen.getByText(/^put into the outbox folder /)).toBeTruthy();
    expect(screen.getByRole('heading', { level: 1 }).textContent).toMatch(/0 sent, 1 in the outbox folder$/);
  });

  it('shows the mails that wait for a person, of whichever month', async () => {
    const july = report('r0', 'approved', { fromOn: '2026-07-01', untilOn: '2026-07-31', mails: [mail('bo', 'unknown')] });
    // Nobody can do anything about these.
    const settled = ['wants-no-more', 'address-gone'].map((answer) => mail(answer, 'refused', { answer }));
    page([report('r1', 'draft', { mails: settled }), july]);
    const waiting = await screen.findByRole('region', { name: 'One mail waits for your word' });
    expect(waiting.textContent).toContain('July 2026 bo@example.test unknown');
    expect(within(waiting).getByRole('link').getAttribute('href')).toBe('/reports?month=2026-07&report=r0');
  });

  it('tells what became of each mail, and takes a person’s word of what nobody knows', async () => {
    const mails = [
      mail('ana', 'sent'),
      mail('bo', 'unknown', { answer: 'no-answer' }),
      mail('cy', 'queued', { attempts: 2, answer: '451 try later' }),
    ];
    const sent = report('r1', 'approved', { mails });
    const { user, calls } = page([sent], { waterReport: sent, settleMail: mail('bo', 'sent') }, '/reports?report=r1');
    expect(await screen.findByText('It goes to board@example.test.')).toBeTruthy();
    const waiting = screen.getByRole('region', { name: 'One mail waits for your word' });
    expect(within(waiting).getByRole('listitem').textContent).toBe('Quail Commons HOA August 2026 bo@example.test unknown');
    const lines = screen.getAllByRole('listitem').map(({ textContent }) => textContent);
    expect(lines[1]).toMatch(/^bo@example.test unknown The connection ended before the server answered/);
    expect(lines[2]).toMatch(/^cy@example.test waiting tried 2 times, again .* 451 try later$/);
    await user.click(within(screen.getAllByRole('listitem')[1]!).getByRole('button', { name: 'It arrived' }));
    expect(calls.find(({ name }) => name === 'SettleMail')?.variables).toEqual({ id: 'bo', found: 'arrived' });
  });
});

describe('what clients asked', () => {
  const asked = (id: string, more: object = {}) => ({
    ...{ id, clientName: 'Quail Commons HOA', about: null, question: `${id}?`, askedAt: '2026-09-03T17:00:00Z' },
    ...{ answer: null, answeredAt: null, email: null, mailState: null, dismissedAt: null, byLink: false, report: null, ...more },
  });

  it('waits for an answer that says where it goes, or is put away; what is settled stands behind one press', async () => {
    const clientQuestions = [
      asked('why', {
        ...{ email: 'ana@example.test', byLink: true },
        report: { id: 'r7', fromOn: '2026-07-01', untilOn: '2026-07-31' },
      }),
      asked('when', { answer: 'On Friday.', email: 'bo@example.test', mailState: 'refused' }),
      asked('pumps', { dismissedAt: '2026-09-04T17:00:00Z' }),
    ];
    const { user, calls } = page([], { clientQuestions, dismissQuestion: asked('why', { dismissedAt: '2026-09-04T17:00:00Z' }) });
    const section = within(await screen.findByRole('region', { name: 'One question of a client' }));
    expect(section.getByText('It goes to ana@example.test, and is shown where it was asked.')).toBeTruthy();
    expect(section.getByText('2 answered or put away')).toBeTruthy();
    expect(section.getByText(/^by a link/)).toBeTruthy();
    const about = section.getByRole('link', { name: 'about the report for 1 to 31 July 2026' });
    expect(about.getAttribute('href')).toBe('/reports?month=2026-07&report=r7');
    // It is said above the list, under which the questions stand.
    expect(screen.getByRole('link', { name: 'One question of a client' }).getAttribute('href')).toBe(
      `#${screen.getByRole('region', { name: 'One question of a client' }).id}`,
    );
    expect(section.getByText(/The mail to bo@example.test was refused\./)).toBeTruthy();
    await user.click(section.getByRole('button', { name: 'No answer needed' }));
    expect(calls.find(({ name }) => name === 'DismissQuestion')?.variables).toEqual({ id: 'why', dismissed: true });
  });

  it('says where mails carry no links, and with which data a report was approved', async () => {
    page([report('r1', 'approved')], { reportMailing: { hasServer: true, hasLinks: false } });
    expect(await screen.findByText(/^Mails carry no link by which a recipient/)).toBeTruthy();
    expect(screen.getByText(/f00d/)).toBeTruthy();
  });
});

describe('one report', () => {
  const approved = { __typename: 'WaterReport', id: 'r1', version: 2, state: 'approved' };

  it('is not approved without the note that was typed, which closing it does not lose', async () => {
    const draft = report('r-noted', 'draft');
    const kept = { __typename: 'WaterReport', id: 'r-noted', version: 2, note: 'Thank you.' };
    const { user, calls } = page(
      [draft],
      { waterReport: draft, changeWaterReport: kept, approveReport: { ...approved, id: 'r-noted' } },
      '/reports?report=r-noted',
    );
    await user.type(await screen.findByLabelText(/^Note to the client/), 'Thank you.');
    await user.click(screen.getByRole('button', { name: 'Close' }));
    await user.click(screen.getByRole('link', { name: 'Quail Commons HOA' }));
    expect(await screen.findByDisplayValue('Thank you.')).toBeTruthy();
    await user.click(screen.getByRole('button', { name: 'Approve' }));
    expect(screen.getByRole('alert').textContent).toMatch(/^The note that you typed is not kept yet/);
    expect(calls.some(({ name }) => name === 'ApproveReport')).toBe(false);
    await user.click(screen.getByRole('button', { name: 'Keep the note' }));
    expect(calls.find(({ name }) => name === 'NoteReport')?.variables).toMatchObject({ input: { note: 'Thank you.' } });
  });

  it('says before it is approved for which letters its PDF has no sign', async () => {
    const draft = report('r1', 'draft', { unprinted: '漢字' });
    page([draft], { waterReport: draft }, '/reports?report=r1');
    expect((await screen.findByRole('note')).textContent).toMatch(/^The PDF has no sign for 漢 字: � stands there instead\./);
  });

  it('that was drafted by mistake is thrown away, once that was said twice', async () => {
    const draft = report('r1', 'draft');
    const { user, calls } = page([draft], { waterReport: draft, retireWaterReport: { __typename: 'WaterReport' } }, '/reports?report=r1');
    await user.click(await screen.findByRole('button', { name: 'Throw the draft away' }));
    expect(calls.some(({ name }) => name === 'DiscardDraft')).toBe(false);
    await user.click(screen.getByRole('button', { name: 'Throw it away' }));
    expect(calls.find(({ name }) => name === 'DiscardDraft')?.variables).toEqual({ id: 'r1', version: 1 });
    expect(await screen.findByText('The draft is gone.')).toBeTruthy();
  });

  it('stays open while the list tells of its first mail before it does itself', async () => {
    const before = report('r1', 'approved');
    const after = report('r1', 'sent', { mails: [mail('dee', 'sent')] });
    let isSent = false;
    let tell: (itself: object) => void = () => undefined;
    const itself = new Promise((resolve) => {
      tell = resolve;
    });
    const { user } = page(
      [],
      {
        waterReports: () => [isSent ? after : before],
        waterReport: () => (isSent ? itself : before),
        sendReports: () => {
          isSent = true;
          return [{ id: 'r1', version: 2, state: 'sent' }];
        },
      },
      '/reports?report=r1',
    );
    await user.click(await screen.findByRole('button', { name: 'Send now' }));
    expect(await screen.findByText('1 sent')).toBeTruthy();
    expect(screen.getByRole('heading', { name: /^In August 2026/ })).toBeTruthy();
    tell(after);
    expect(await screen.findByText('dee@example.test')).toBeTruthy();
  });

  it('that somebody changed meanwhile says so instead of nothing', async () => {
    const draft = report('r1', 'draft');
    const { user } = page([draft], { waterReport: draft, approveReport: { __typename: 'ChangedMeanwhile' } }, '/reports?report=r1');
    await user.click(await screen.findByRole('button', { name: 'Approve' }));
    expect(await screen.findByText('Somebody changed it meanwhile. Load the page again.')).toBeTruthy();
  });

  it('approves what is on the screen, and names who is not mailed', async () => {
    const draft = report('r1', 'draft', { stoppedAddresses: ['board@example.test'], mails: [mail('dee', 'queued', { attempts: 3 })] });
    const { user, calls } = page([draft], { waterReport: draft, mailAgain: true, approveReport: approved }, '/reports?report=r1');
    expect(await screen.findByText(/^Nobody is mailed: every address/)).toBeTruthy();
    expect(screen.queryByText(/^It goes to/)).toBeNull();
    expect(screen.getByRole('region', { name: 'One mail waits for your word' }).textContent).toContain('dee@example.test');
    await user.click(screen.getByRole('button', { name: 'They asked to be mailed again' }));
    expect(calls.find(({ name }) => name === 'MailAgain')?.variables).toEqual({ email: 'board@example.test' });
    await user.click(screen.getByRole('button', { name: 'Approve' }));
    expect(calls.find(({ name }) => name === 'ApproveReport')?.variables).toEqual({ id: 'r1', version: 1, dataVersion: 'abc' });
  });
});

describe('the company’s month', () => {
  const month = {
    month: '2026-08',
    savedLitres: 400_000,
    halfWidthLitres: 90_000,
    savedMoney: 612.4,
    toldOf: 3,
    notToldOf: 1,
    findings: [{ kind: 'steady flow', opened: 2, resolved: 1, open: 1, litres: 10_000, lackingLitres: 0, money: 20 }],
    ordersDone: 7,
    crews: [{ name: 'Crew 1', stops: 8, visits: 7, ordersDone: 5 }],
    sitesToUpgrade: [{ propertyId: 'p1', name: 'Heron Flats', litres: 79_000, money: null }],
  };
  const drawn = (ownersMonth: object) =>
    drawPage(<CompanyMonthPage />, { at: '/reports/company', route: '/reports/company', answers: { portfolio, ownersMonth } });

  it('says what was saved and how sure that is, and which sites need an upgrade', async () => {
    drawn(month);
    expect(
      await screen.findByRole('heading', { name: 'In August 2026 the work saved 105,700 gal, give or take 23,800 gal, about $612' }),
    ).toBeTruthy();
    expect(screen.getByRole('heading', { name: 'One site will not come right without an upgrade' })).toBeTruthy();
    expect(screen.getByRole('link', { name: 'Heron Flats' }).getAttribute('href')).toBe('/properties/p1');
  });

  it('names no money that is not known', async () => {
    const findings = [{ kind: 'steady flow', opened: 0, resolved: 0, open: 2, litres: null, lackingLitres: 0, money: null }];
    drawn({ ...month, savedMoney: null, findings });
    expect(await screen.findByRole('heading', { name: /^In August 2026 the work saved .*, give or take 23,800 gal$/ })).toBeTruthy();
    expect(screen.getAllByRole('cell', { name: 'not known' })).toHaveLength(2);
  });

  it('does not call chance a saving', async () => {
    drawn({ ...month, savedLitres: -400_000, halfWidthLitres: 500_000 });
    expect(await screen.findByRole('heading', { name: /cannot be told from chance: −105,700 gal/ })).toBeTruthy();
    expect(screen.getByText('7 orders were done in the month, on a route or off it.')).toBeTruthy();
  });
});

describe('the dress of reports', () => {
  it('refuses a colour that cannot be read on white, and keeps a name and a place', async () => {
    const { user, calls } = drawPage(<BrandPage />, {
      answers: { reportBrand: { name: null, colour: '#ffee88', logo: null, contact: null, version: 3 }, changeReportBrand: { version: 4 } },
    });
    await user.type(await screen.findByLabelText(/^Name on the report/), 'Larkspur');
    await user.click(screen.getByRole('button', { name: 'Save the change' }));
    expect(screen.getByText(/too pale to be read/)).toBeTruthy();
    expect(calls.some(({ name }) => name === 'ChangeReportBrand')).toBe(false);
    await user.click(screen.getByRole('button', { name: 'Use the report’s own colour' }));
    await user.click(screen.getByRole('button', { name: 'Save the change' }));
    expect(calls.find(({ name }) => name === 'ChangeReportBrand')?.variables).toEqual({
      input: { name: 'Larkspur', colour: null, contact: null },
    });
  });
});
