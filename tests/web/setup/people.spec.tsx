import { cleanup, screen, waitFor, within } from '@testing-library/react';
import { afterEach, describe, expect, it } from 'vitest';
import { SetupPage } from '../../../apps/web/src/features/setup/frame/SetupPage.js';
import { refusal } from '../support/fake-server.js';
import { drawPage, viewerOf } from '../support/draw-page.js';
import { ownerOf } from './owner.js';

afterEach(cleanup);

const person = (id: string, name: string) => ({ id, name, email: `${id}@larkspur.example`, language: 'en' });
const me = { id: 'me', version: 1, role: 'owner', retiredAt: null, client: null, person: person('june', 'June Halvorsen') };
const ana = { id: 'm-ana', version: 2, role: 'technician', retiredAt: null, client: null, person: person('ana', 'Ana Prado') };
const quail = { id: 'k1', version: 1, name: 'Quail Commons HOA', emails: [], properties: [] };
const invited = { id: 'i1', name: 'Tomas Vela', email: 'tomas@larkspur.example', role: 'crewLead', expiresAt: '2026-10-01T15:00:00Z' };

const draw = (answers: Readonly<Record<string, unknown>> = {}) =>
  drawPage(<SetupPage />, {
    route: '/setup/*',
    at: '/setup/people',
    viewer: ownerOf(),
    answers: { members: [me, ana], invitations: [invited], clients: [quail], ...answers },
  });

describe('people', () => {
  it('are listed with their roles; who is invited stands under them', async () => {
    draw();
    expect(await screen.findByRole('heading', { level: 1, name: '2 people work with these books, and one is invited' })).toBeDefined();
    expect(within(screen.getByRole('row', { name: /June Halvorsen/ })).getByText('you')).toBeDefined();
    expect(within(screen.getByRole('row', { name: /Tomas Vela/ })).getByText(/the link is good until Thu 1 Oct/)).toBeDefined();
  });

  it('an invitation is withdrawn by one press and one that says what follows', async () => {
    const { user, calls } = draw({ withdrawInvitation: [] });
    const row = within(await screen.findByRole('row', { name: /Tomas Vela/ }));
    await user.click(row.getByRole('button', { name: 'Withdraw Tomas Vela' }));
    expect(calls.some(({ name }) => name === 'WithdrawInvitation')).toBe(false);
    await user.click(row.getByRole('button', { name: /^Yes, withdraw: the link stops working/ }));
    await waitFor(() => expect(calls.find(({ name }) => name === 'WithdrawInvitation')?.variables).toEqual({ id: 'i1' }));
    expect(await screen.findByText('The invitation of Tomas Vela is withdrawn.')).toBeDefined();
  });

  it('a role is changed', async () => {
    const { user, calls } = draw({ changeMember: { ...ana, version: 3, role: 'crewLead' } });
    await user.click(await screen.findByRole('button', { name: 'Change Ana Prado' }));
    const form = screen.getByRole('dialog');
    await user.click(within(form).getByRole('radio', { name: /^crew lead/ }));
    await user.click(within(form).getByRole('button', { name: 'Save the change' }));
    await waitFor(() => expect(screen.queryByRole('dialog')).toBeNull());
    expect(calls.find(({ name }) => name === 'ChangeMember')?.variables).toEqual({
      id: 'm-ana',
      version: 2,
      role: 'crewLead',
      clientId: null,
    });
  });

  it('the role of a client asks for the client', async () => {
    const { user, calls } = draw({ changeMember: { ...ana, version: 3, role: 'client', client: quail } });
    await user.click(await screen.findByRole('button', { name: 'Change Ana Prado' }));
    const form = screen.getByRole('dialog');
    await user.click(within(form).getByRole('radio', { name: /^client/ }));
    await user.click(within(form).getByRole('button', { name: 'Save the change' }));
    expect((await within(form).findByRole('alert')).textContent).toContain('Choose the client whose reports they may see.');
    await user.selectOptions(within(form).getByLabelText('Client'), 'k1');
    await user.click(within(form).getByRole('button', { name: 'Save the change' }));
    await waitFor(() =>
      expect(calls.find(({ name }) => name === 'ChangeMember')?.variables).toMatchObject({ role: 'client', clientId: 'k1' }),
    );
  });

  it('a membership ends on the second press; a refusal is told', async () => {
    const { user, calls } = draw({
      retireMember: () => {
        throw refusal('LAST_OWNER', 'An organization keeps at least one owner.');
      },
    });
    await user.click(await screen.findByRole('button', { name: 'Change Ana Prado' }));
    await user.click(screen.getByRole('button', { name: 'End the membership' }));
    expect(calls.some(({ name }) => name === 'RetireMember')).toBe(false);
    expect(screen.getByText(/Ana Prado can then no longer sign in here/)).toBeDefined();
    await user.click(screen.getByRole('button', { name: 'Yes, end it' }));
    expect((await screen.findByRole('alert')).textContent).toContain('An organization keeps at least one owner.');
  });

  it('an invitation’s link is shown whole, once, to be copied', async () => {
    const { user, calls } = draw({
      inviteMember: { link: '/invitation/abc123', invitation: { ...invited, id: 'i2', name: 'Rosa Quint' } },
    });
    await user.click(await screen.findByRole('button', { name: 'Make the link' }));
    expect((await screen.findByRole('alert')).textContent).toContain('Type their e-mail address.');
    await user.type(screen.getByLabelText('Name'), 'Rosa Quint');
    await user.type(screen.getByLabelText('E-mail'), 'rosa@larkspur.example');
    await user.click(screen.getByRole('button', { name: 'Make the link' }));
    const link = await screen.findByText(`${window.location.origin}/invitation/abc123`);
    expect(calls.find(({ name }) => name === 'InviteMember')?.variables).toMatchObject({
      name: 'Rosa Quint',
      role: 'crewLead',
      clientId: null,
    });
    await user.click(screen.getByRole('button', { name: 'Copy the link' }));
    expect(await screen.findByRole('button', { name: 'The link is copied.' })).toBeDefined();
    expect(await navigator.clipboard.readText()).toBe(link.textContent);
  });

  it('are not the office’s to manage', async () => {
    drawPage(<SetupPage />, { route: '/setup/*', at: '/setup/people', viewer: viewerOf() });
    expect(await screen.findByRole('heading', { level: 1, name: 'There is no page at this address' })).toBeDefined();
    expect(screen.queryByRole('link', { name: 'People' })).toBeNull();
  });
});
