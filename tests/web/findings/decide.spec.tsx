import { cleanup, screen, waitFor, within } from '@testing-library/react';
import { afterEach, describe, expect, it } from 'vitest';
import { builtWorkOrder } from '../support/built.js';
import { refusal } from '../support/fake-server.js';
import { article, cheap, crew2, dear, last, page } from './drawn-findings.js';

afterEach(cleanup);

const accepted = {
  __typename: 'FindingAccepted',
  finding: { ...dear, state: 'in work', version: 2 },
  workOrder: builtWorkOrder('w1', 'adjust'),
};

describe('accepting', () => {
  it('accepts with a: the work is suggested, crew and day are given with it, and the next finding comes', async () => {
    const { user, calls, address } = page({
      at: '/findings/f1',
      more: {
        acceptFinding: accepted,
        assignWorkOrder: { __typename: 'WorkOrder', ...builtWorkOrder('w1', 'adjust', { version: 2, crew: crew2, day: '2026-09-28' }) },
      },
    });
    await article();
    await user.keyboard('a');
    const dialog = within(screen.getByRole('dialog', { name: 'What should be done at Quail Commons?' }));
    expect(dialog.getByRole('radio', { name: 'Adjust' })).toHaveProperty('checked', true);
    await user.selectOptions(dialog.getByLabelText('Crew'), 'Crew 2');
    await user.click(dialog.getByRole('button', { name: 'Make the work order' }));
    expect(dialog.getByText(/Choose a day for the crew/)).toBeTruthy();
    await user.type(dialog.getByLabelText(/^Day/), '2026-09-28');
    await user.click(dialog.getByRole('button', { name: 'Make the work order' }));
    expect(await screen.findByText('Work order made: adjust, Crew 2, Mon 28 Sep.')).toBeTruthy();
    expect(last(calls, 'AcceptFinding')).toMatchObject({
      id: 'f1',
      version: 1,
      input: {
        propertyId: 'p1',
        findingId: 'f1',
        controllerId: 'c1',
        kind: 'adjust',
        what: 'Program A gives zone 3 (Pool lawn) more than the plants need. About 72% of the present minutes would do.',
        wordsOf: 'finding',
      },
    });
    expect(last(calls, 'GiveOutAcceptedWork')).toEqual({ id: 'w1', version: 1, crewId: 'crew-2', day: '2026-09-28' });
    await waitFor(() => expect(address()).toBe('/findings/f2'));
  });

  it('refuses a day that is over, and work without words', async () => {
    const { user, calls } = page({ at: '/findings/f1', more: { acceptFinding: accepted } });
    await article();
    await user.click(screen.getByRole('button', { name: /^Accept/ }));
    const dialog = within(screen.getByRole('dialog'));
    await user.clear(dialog.getByLabelText('What to do'));
    await user.selectOptions(dialog.getByLabelText('Crew'), 'Crew 2');
    await user.type(dialog.getByLabelText(/^Day/), '2026-09-20');
    await user.click(dialog.getByRole('button', { name: 'Make the work order' }));
    expect(dialog.getByText(/Say in a few words what should be done/)).toBeTruthy();
    expect(dialog.getByText(/This day is over/)).toBeTruthy();
    expect(calls.some(({ name }) => name === 'AcceptFinding')).toBe(false);
  });
});

describe('when it cannot be accepted', () => {
  it('says that somebody was quicker, that approval is needed, and what the server refuses', async () => {
    const { user } = page({
      at: '/findings/f1',
      more: {
        acceptFinding: { __typename: 'ChangedMeanwhile', id: 'f1', version: 3, changedBy: 'Ana', changedAt: '2026-09-24T16:10:00Z' },
      },
    });
    await article();
    await user.keyboard('a');
    await user.click(screen.getByRole('button', { name: 'Make the work order' }));
    expect((await screen.findByRole('alert')).textContent).toMatch(/^Ana changed this meanwhile \(Thu 24 Sep, 9:10 am\)/);
    cleanup();
    const waits = page({
      at: '/findings/f1',
      more: {
        acceptFinding: accepted,
        assignWorkOrder: { __typename: 'ApprovalNeeded', cost: 900, notToExceed: 500, workOrder: builtWorkOrder('w1', 'repair') },
      },
    });
    await article();
    await waits.user.keyboard('a');
    await waits.user.selectOptions(screen.getByLabelText('Crew'), 'Crew 2');
    await waits.user.type(screen.getByLabelText(/^Day/), '2026-09-28');
    await waits.user.click(screen.getByRole('button', { name: 'Make the work order' }));
    expect(await screen.findByText(/waits for approval: it costs \$900, and \$500/)).toBeTruthy();
    cleanup();
    const refused = page({
      at: '/findings/f1',
      more: {
        acceptFinding: () => {
          throw refusal('FINDING_SETTLED', 'This finding is settled.');
        },
      },
    });
    await article();
    await refused.user.keyboard('a');
    await refused.user.click(screen.getByRole('button', { name: 'Make the work order' }));
    expect((await screen.findByRole('alert')).textContent).toContain('This finding is settled.');
  });
});

describe('settling', () => {
  it('goes on to the next finding, also where the keys had chosen the one that is dismissed', async () => {
    const { user, calls, address } = page({
      more: { dismissFinding: { __typename: 'Finding', ...cheap, state: 'dismissed', version: 2 } },
    });
    await article();
    await user.keyboard('j');
    await waitFor(() => expect(address()).toBe('/findings/f2'));
    await screen.findByRole('heading', { level: 1, name: /no program explains/ });
    await user.keyboard('d');
    await user.click(within(await screen.findByRole('dialog')).getByRole('button', { name: 'Dismiss' }));
    await waitFor(() => expect(last(calls, 'DismissFinding')).toMatchObject({ id: 'f2' }));
    await waitFor(() => expect(screen.queryByRole('dialog')).toBeNull());
    expect(address()).toBe('/findings/f3');
  });

  it('dismisses with d and a reason, and takes it back', async () => {
    const dismissed = { __typename: 'Finding', ...dear, state: 'dismissed', version: 2 };
    const { user, calls } = page({
      at: '/findings/f1',
      more: { dismissFinding: dismissed, reopenFinding: { ...dismissed, state: 'open', version: 3 } },
    });
    await article();
    await user.keyboard('d');
    const dialog = within(screen.getByRole('dialog', { name: 'Why is nothing to be done?' }));
    await user.click(dialog.getByRole('radio', { name: 'Another reason' }));
    await user.click(dialog.getByRole('button', { name: 'Dismiss' }));
    expect(dialog.getByText(/Say the reason in a few words/)).toBeTruthy();
    await user.type(dialog.getByLabelText('In your words'), 'the board keeps the birches');
    await user.click(dialog.getByRole('button', { name: 'Dismiss' }));
    await user.click(await screen.findByRole('button', { name: 'Undo' }));
    expect(last(calls, 'DismissFinding')).toEqual({ id: 'f1', version: 1, reason: 'other', why: 'the board keeps the birches' });
    await waitFor(() => expect(last(calls, 'ReopenFinding')).toEqual({ id: 'f1', version: 2 }));
  });

  it('resolves with what was found, and opens a settled one again', async () => {
    const { user, calls } = page({
      at: '/findings/f2',
      more: { resolveFinding: { __typename: 'Finding', ...cheap, state: 'resolved', version: 2 } },
    });
    await article();
    await user.keyboard('r');
    await user.type(screen.getByLabelText('What was found, and what was done'), 'a broken head');
    await user.click(within(screen.getByRole('dialog')).getByRole('button', { name: 'Resolve' }));
    await waitFor(() => expect(last(calls, 'ResolveFinding')).toEqual({ id: 'f2', version: 1, with: 'a broken head' }));
    cleanup();
    const settled = { ...dear, state: 'dismissed', dismissedWhy: 'agreed', decidedBy: 'Ana', decidedAt: '2026-09-20T16:10:00Z' };
    const again = page({
      at: '/findings/f1',
      more: { finding: settled, reopenFinding: { __typename: 'Finding', ...settled, state: 'open', version: 2 } },
    });
    expect(await screen.findByText('Dismissed by Ana, Sun 20 Sep, 9:10 am: agreed')).toBeTruthy();
    expect(document.querySelector('.crumb')?.textContent).toMatch(/ · opened /);
    await again.user.click(screen.getByRole('button', { name: 'Open it again' }));
    await waitFor(() => expect(last(again.calls, 'ReopenFinding')).toEqual({ id: 'f1', version: 1 }));
  });

  it('speaks Spanish', async () => {
    page({ at: '/findings/f1', language: 'es' });
    expect((await screen.findByRole('heading', { level: 1 })).textContent).toMatch(/^El programa A da a la zona 3 \(Pool lawn\) más/);
    expect(screen.getByRole('button', { name: /Descartar con una razón/ })).toBeTruthy();
  });
});
