import { cleanup, screen, waitFor, within } from '@testing-library/react';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { SetupPage } from '../../../apps/web/src/features/setup/frame/SetupPage.js';
import { ClearDemo } from '../../../apps/web/src/features/setup/organization/ClearDemo.js';
import { gallons } from '../support/built.js';
import { drawPage } from '../support/draw-page.js';
import { ownerOf } from './owner.js';

afterEach(cleanup);

const organization = {
  ...ownerOf().organization,
  version: 4,
  leastConfidence: 0.95,
  leastLitres: 3785.4,
  leastMoney: 12.5,
  now: '2026-09-24T15:00:00Z',
};
const planSetting = {
  version: 0,
  waterFrom: '22:00',
  waterUntil: '06:00',
  thirst: 3,
  waste: 1,
  keyPress: gallons(2),
  watering: gallons(1),
};
const meIn = (given: object = {}) => ({ ...ownerOf(), organization: { ...organization, ...given } });

const draw = (answers: Readonly<Record<string, unknown>> = {}) =>
  drawPage(<SetupPage />, {
    route: '/setup/*',
    at: '/setup/organization',
    viewer: ownerOf(),
    answers: { me: meIn(), planSetting, ...answers },
  });

describe('the organization', () => {
  it('shows its thresholds in its own units, and sends back what nobody touched unrounded', async () => {
    const { user, calls } = draw({ changeOrganization: { ...organization, version: 5 } });
    // 3785.4 L are a hair under 1,000 US gal (3.785411784 L each, exactly).
    expect((await screen.findByLabelText<HTMLInputElement>('Least volume a month')).value).toBe('1,000');
    const confidence = screen.getByLabelText('Least confidence');
    await user.clear(confidence);
    await user.type(confidence, '90');
    await user.click(screen.getByRole('button', { name: 'Save the change' }));
    await waitFor(() =>
      expect(calls.find(({ name }) => name === 'ChangeOrganization')?.variables).toEqual({
        version: 4,
        input: { name: 'Larkspur Grounds', language: 'en', units: 'us', leastConfidence: 0.9, leastLitres: 3785.4, leastMoney: 12.5 },
      }),
    );
    expect(await screen.findByText('It is saved.')).toBeDefined();
  });

  it('takes a typed volume in gallons, and says what is no number', async () => {
    const { user, calls } = draw({ changeOrganization: { ...organization, version: 5 } });
    const volume = await screen.findByLabelText('Least volume a month');
    await user.clear(volume);
    await user.type(volume, 'much');
    await user.click(screen.getByRole('button', { name: 'Save the change' }));
    expect((await screen.findByRole('alert')).textContent).toContain('“much” is not a number.');
    await user.clear(volume);
    await user.type(volume, '2,500');
    await user.click(screen.getByRole('button', { name: 'Save the change' }));
    await waitFor(() => expect(calls.some(({ name }) => name === 'ChangeOrganization')).toBe(true));
    const { input } = calls.find(({ name }) => name === 'ChangeOrganization')!.variables as { input: { leastLitres: number } };
    expect(input.leastLitres).toBeCloseTo(gallons(2500), 9);
  });

  it('offers to clear the demonstration only where there is one', async () => {
    draw();
    await screen.findByLabelText('Least confidence');
    expect(screen.queryByRole('button', { name: 'Clear the made-up valley' })).toBeNull();
  });
});

describe('clearing the demonstration', () => {
  it('names what goes, and goes to the door when it is gone', async () => {
    const onCleared = vi.fn();
    const { user, calls } = drawPage(<ClearDemo name="Larkspur Grounds" onCleared={onCleared} />, { answers: { clearDemo: true } });
    await user.click(screen.getByRole('button', { name: 'Clear the made-up valley' }));
    const asked = screen.getByRole('dialog');
    expect(within(asked).getByText(/properties, readings, settings, findings, routes, photos and people/)).toBeDefined();
    expect(calls).toHaveLength(0);
    await user.click(within(asked).getByRole('button', { name: 'Take it away' }));
    await waitFor(() => expect(onCleared).toHaveBeenCalledOnce());
  });
});

describe('what programs are planned by', () => {
  it('is changed in the units of the organization, and what nobody touched goes back as it was', async () => {
    const { user, calls } = draw({ changePlanSetting: { ...planSetting, version: 1 } });
    const presses = await screen.findByLabelText<HTMLInputElement>('Water that one key press may save at least');
    await user.clear(presses);
    await user.type(presses, '5');
    await user.click(screen.getByRole('button', { name: 'Save what plans go by' }));
    await waitFor(() => expect(calls.some(({ name }) => name === 'ChangePlanSetting')).toBe(true));
    const { version, input } = calls.find(({ name }) => name === 'ChangePlanSetting')!.variables as { version: number; input: object };
    const { version: _, ...kept } = planSetting;
    expect({ version, ...input }).toEqual({ ...kept, version: 0, keyPress: expect.closeTo(gallons(5), 6) });
  });

  it('says that thirst costs more than waste, and sends nothing', async () => {
    const { user, calls } = draw();
    const thirst = await screen.findByLabelText('Price of water that plants go without');
    await user.clear(thirst);
    await user.type(thirst, '0.5');
    await user.click(screen.getByRole('button', { name: 'Save what plans go by' }));
    expect((await screen.findAllByText(/^Thirst must cost at least as much as waste/)).length).toBeGreaterThan(0);
    expect(calls.some(({ name }) => name === 'ChangePlanSetting')).toBe(false);
  });
});
