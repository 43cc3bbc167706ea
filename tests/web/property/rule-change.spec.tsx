import { cleanup, configure, screen } from '@testing-library/react';
import { afterEach, describe, expect, it } from 'vitest';
import { RuleChangePage } from '../../../apps/web/src/features/property/rule-change/RuleChangePage.js';
import { gallons } from '../support/built.js';
import { drawPage } from '../support/draw-page.js';

configure({ asyncUtilTimeout: 10_000 });

afterEach(cleanup);

const program = (days: string, adjustPercent: number) => ({
  ...{ name: 'A', days, starts: ['21:30'], adjustPercent },
  stations: [{ station: 3, minutes: 40, cycles: null, soakMinutes: null }],
});
const result = {
  ...{ usedLitres: 0, neededLitres: 0, unmetLitres: gallons(1500), wastedLitres: gallons(300), ranOffLitres: 0, keyPresses: 2 },
  ...{ beginsAt: '21:30', endsAt: '05:48', limits: [], breaches: [], zones: [] },
};
const under = (controllerId: string, breaches: object[] | null, plan: object | null) => ({
  controllerId,
  property: { id: `p-${controllerId}`, name: `Quail Commons ${controllerId}` },
  controller: { id: controllerId, name: 'Clubhouse', presentSettings: { id: 's1', state: 'on', programs: [program('Tue Thu Sat', 100)] } },
  breaches,
  plan,
});
const broken = [{ rule: 'Stage 2', kind: 'too many days a week', program: 'A', stations: [3], times: 4 }];
const plan = { reason: null, leastChange: { kind: 'percent and days', programs: [program('Tue Sat', 140)], result }, full: null };

const draw = (answers: object = {}) =>
  drawPage(<RuleChangePage />, {
    at: '/rule-change/su1',
    route: '/rule-change/:supplierId',
    answers: {
      waterSuppliers: [{ id: 'su1', name: 'Fennel Hollow Water', rules: [{ id: 'r1', name: 'Stage 1', retiredAt: null }] }],
      crews: [{ id: 'crew-2', name: 'Crew 2' }],
      ruleChange: { month: '2026-10', properties: 2, controllers: [under('c1', broken, plan), under('c2', null, null)] },
      bringInRule: { id: 'r2', name: 'Stage 2' },
      orderRuleChange: [{ id: 'w1' }],
      ...answers,
    },
  });

describe('a supplier’s new rule', () => {
  it('is typed, shows who breaks it and what to enter, is brought in, and goes to a crew', async () => {
    const { user, calls } = draw();
    await user.type(await screen.findByLabelText('Name of the rule'), 'Stage 2');
    await user.type(screen.getByLabelText('Days a week at most'), '2');
    await user.click(screen.getByRole('radio', { name: 'Days of the week' }));
    for (const day of ['Monday', 'Wednesday', 'Thursday', 'Friday', 'Sunday'])
      await user.click(screen.getByRole('checkbox', { name: day }));
    await user.selectOptions(screen.getByLabelText('Replaces'), 'Stage 1');
    await user.click(screen.getByRole('button', { name: 'Show what it changes' }));
    await screen.findByRole('heading', { name: 'One controller breaks a rule then, of 2 looked at' });
    expect(screen.getByText('Stage 2: too many days a week, on 4 days')).toBeTruthy();
    expect(screen.getByText('A: Tue Sat, was Tue Thu Sat; A: 140%, was 100%')).toBeTruthy();
    expect(screen.getByText('1,500 gal unmet, 300 gal wasted, ends at 5:48 am')).toBeTruthy();
    expect(screen.getByText(/One controller’s settings are not known/)).toBeTruthy();
    await user.click(screen.getByRole('button', { name: 'Bring in the rule' }));
    await user.selectOptions(await screen.findByLabelText('Crew'), 'Crew 2');
    await user.click(screen.getByRole('button', { name: 'Make the work orders' }));
    expect(await screen.findByText(/One work order is made\./)).toBeTruthy();
    const sent = (name: string) => calls.find((call) => call.name === name)?.variables;
    expect(sent('BringInRule')).toMatchObject({
      rule: { supplierId: 'su1', name: 'Stage 2', daysPerWeek: 2, allowedDays: 'Tue Sat' },
      replaces: 'r1',
    });
    expect(sent('OrderRuleChange')).toEqual({
      input: { propertyIds: ['p-c1'], month: '2026-10', what: 'Stage 2', crewId: 'crew-2', day: '2026-09-24' },
    });
  });

  it('says what is missing of the rule, and asks nothing', async () => {
    const { user, calls } = draw();
    await user.type(await screen.findByLabelText('Name of the rule'), 'Stage 2');
    await user.click(screen.getByRole('button', { name: 'Show what it changes' }));
    expect(await screen.findByText(/The rule forbids nothing yet/)).toBeTruthy();
    expect(calls.some(({ name }) => name === 'WhatARuleChanges')).toBe(false);
  });
});
