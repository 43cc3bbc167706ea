import { cleanup, screen, waitFor, within } from '@testing-library/react';
import { afterEach, describe, expect, it } from 'vitest';
import { viewerOf } from '../support/draw-page.js';
import { article, cheap, last, page } from './drawn-findings.js';

afterEach(cleanup);

describe('a finding', () => {
  it('lists the dearest first, and shows the evidence of the first', async () => {
    page();
    const lines = (await screen.findAllByRole('listitem')).filter((line) => line.closest('.work')).map((line) => line.textContent);
    expect(lines).toEqual([
      'Over-programmed$524Quail Commons',
      'Unexplained use$40Quail Commons · came back',
      'Under-programmedtoo littleQuail Commons',
      'Doubtful reading–Quail Commons',
    ]);
    expect(screen.getByText('4 to decide')).toBeTruthy();
    expect((await screen.findByRole('heading', { level: 1 })).textContent).toBe(
      'Program A gives zone 3 (Pool lawn) more than the plants need: since Tuesday 1 September, 97% sure, about 92,700 gal and $524 from 1 to 24 September 2026; first, compare the controller with the settings on record, of whose minutes about 72% would do',
    );
  });

  it('tells water, money and days, the zones with over and under apart, the months, and what to check', async () => {
    page({ at: '/findings/f1' });
    const shown = within(await article());
    expect(shown.getByText('Seen from Tuesday 1 September to Thursday 24 September.')).toBeTruthy();
    const zones = within(shown.getByRole('table', { name: 'Zone by zone, for these days' }))
      .getAllByRole('row')
      .slice(1);
    expect(zones.map((zone) => zone.textContent)).toEqual(['3 Pool lawn50020,00025,5005,500', '9 Parkway trees50020,00012,1007,900']);
    expect(zones.map((zone) => zone.querySelector('[data-side]')?.getAttribute('data-side'))).toEqual(['over', 'under']);
    expect(shown.getByText('In 5 earlier months the meter passed 102% of what was programmed.')).toBeTruthy();
    expect(shown.getByText(/^Confidence 0.97/)).toBeTruthy();
    expect(shown.getByText('New, sick and large plants need a person’s eye before water is cut.')).toBeTruthy();
    const months = within(shown.getByRole('table', { name: 'Twelve months of the account' }));
    expect(months.getAllByRole('columnheader').map((head) => head.textContent)).toEqual(['Aug', 'Sep to 24']);
    expect(months.getByRole('link', { name: 'Aug' }).getAttribute('href')).toBe('/properties/p1?month=2026-08');
  });

  it('tells too little as missing water that cost nothing, and a reading without volume', async () => {
    page({ at: '/findings/f3' });
    expect(within(await article()).getByText(/about 57,900 gal too little from 1 to 24 September 2026/)).toBeTruthy();
    cleanup();
    page({ at: '/findings/f4' });
    expect(within(await article()).getByText(/water and money cannot be told before it is put right/)).toBeTruthy();
  });
});

describe('the list of findings', () => {
  const many = (count: number) => Array.from({ length: count }, (_, at) => ({ ...cheap, id: `m${at}`, money: 1000 - at }));

  it('is grouped by what is to be done first, and kinds that were seldom worth a look here come last', async () => {
    page({
      at: '/findings/f1',
      more: {
        findingPrecision: [
          { kind: 'over-programmed', isSeldomUseful: true },
          { kind: 'unexplained use', isSeldomUseful: false },
        ],
      },
    });
    await article();
    const lists = within(screen.getByRole('complementary')).getAllByRole('list');
    expect(lists.map((list) => list.getAttribute('aria-label'))).toEqual([
      'Water to save, the dearest first',
      'Plants that get too little',
      'Records and rules to put right',
      'Seldom worth a look here',
    ]);
    // The first heading of the page is the finding's own.
    expect(screen.getAllByRole('heading')[0]?.tagName).toBe('H1');
    expect(within(await article()).getByText('Seldom worth a look here')).toBeTruthy();
    const kinds = lists.map((list) =>
      within(list)
        .getAllByRole('link')
        .map(({ textContent }) => textContent),
    );
    expect(kinds).toEqual([['Unexplained use'], ['Under-programmed'], ['Doubtful reading'], ['Over-programmed']]);
  });

  it('shows fifty at a time, more when asked or when the keys go on, and always the chosen one', async () => {
    const { user } = page({ findings: many(120) });
    const lines = () => within(screen.getByRole('complementary')).getAllByRole('listitem').length;
    await waitFor(() => expect(lines()).toBe(50));
    expect(screen.getByText('120 to decide')).toBeTruthy();
    await user.click(screen.getByRole('button', { name: 'Show 50 more of 120' }));
    expect(lines()).toBe(100);
    await user.click(screen.getByRole('button', { name: 'Show 20 more of 120' }));
    expect(screen.queryByRole('button', { name: /more of/ })).toBeNull();
    cleanup();
    const deep = page({ findings: many(120), at: '/findings/m49' });
    await waitFor(() => expect(lines()).toBe(100));
    await deep.user.keyboard('j');
    await waitFor(() => expect(deep.address()).toBe('/findings/m50'));
  });

  it('is walked with j and k, the choice standing in the address; Enter goes to the evidence', async () => {
    const { user, address } = page();
    await article();
    await user.keyboard('j');
    await waitFor(() => expect(address()).toBe('/findings/f2'));
    await user.keyboard('j');
    await waitFor(() => expect(address()).toBe('/findings/f3'));
    await user.keyboard('k');
    await waitFor(() => expect(address()).toBe('/findings/f2'));
    expect(screen.getByRole('link', { name: 'Unexplained use' }).closest('li')?.getAttribute('aria-current')).toBe('true');
    await screen.findByRole('heading', { level: 1, name: /no program explains/ });
    await user.keyboard('{Enter}');
    await waitFor(() => expect(document.activeElement).toBe(screen.getByRole('article')));
  });

  it('keeps state and kind in the address', async () => {
    const { user, address, calls } = page({ at: '/findings?state=dismissed&kind=stale' });
    await article();
    expect(last(calls, 'Findings')).toEqual({ state: ['dismissed'], kind: 'stale' });
    await user.selectOptions(screen.getByLabelText('State'), 'In work');
    await waitFor(() => expect(address()).toBe('/findings?state=in+work&kind=stale'));
    await user.click(screen.getByRole('link', { name: 'Unexplained use' }));
    await waitFor(() => expect(address()).toBe('/findings/f2?state=in+work&kind=stale'));
  });

  it('says when there is nothing to decide, and when a link leads nowhere', async () => {
    page({ findings: [] });
    await screen.findByRole('heading', { level: 1, name: 'Nothing to decide' });
    cleanup();
    page({ at: '/findings/none' });
    await screen.findByRole('heading', { name: 'This finding is not there' });
  });

  it('leaves decisions to those who may decide', async () => {
    const { user } = page({ viewer: viewerOf({ permissions: ['read findings'] }) });
    await article();
    expect(screen.queryByRole('button', { name: /^Accept/ })).toBeNull();
    await user.keyboard('a');
    expect(screen.queryByRole('dialog')).toBeNull();
    await user.keyboard('?');
    const keys = within(screen.getByRole('dialog', { name: 'Keys on this page' }));
    expect(keys.queryByText('accept it and make a work order')).toBeNull();
  });
});
