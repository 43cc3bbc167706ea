import { cleanup, screen } from '@testing-library/react';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { InvitationPage } from '../../../apps/web/src/features/identity/InvitationPage.js';
import { SignInPage } from '../../../apps/web/src/features/identity/SignInPage.js';
import { drawPage, viewerOf } from '../support/draw-page.js';
import { refusal } from '../support/fake-server.js';

afterEach(cleanup);

const door = {
  email: 'owner@larkspur.example',
  password: 'quail-and-clover',
  name: 'June Halvorsen',
  role: 'owner',
  organizationName: 'Larkspur Grounds',
};
const signedIn = {
  __typename: 'SignedIn',
  me: { ...viewerOf(), organization: { ...viewerOf().organization, leastConfidence: 0.8, leastLitres: 1, leastMoney: 1 } },
};
const page = (signIn: unknown, given: { at?: string; empty?: boolean; language?: 'en' | 'es' } = {}) => {
  const onEntered = vi.fn();
  const drawn = drawPage(<SignInPage onEntered={onEntered} />, {
    at: given.at ?? '/sign-in',
    ...(given.language ? { language: given.language } : {}),
    answers: { signInPage: { demo: [door], empty: given.empty ?? false }, signIn: () => signIn, foundOrganization: () => signedIn },
  });
  return { ...drawn, onEntered };
};

describe('the door', () => {
  it('takes e-mail and password, and leads to where the person wanted to go', async () => {
    const { user, calls, onEntered } = page(signedIn, { at: '/sign-in?next=%2Ffindings%2F7%3Fkind%3Dstale' });
    await user.type(await screen.findByLabelText('E-mail'), ' june@larkspur.example');
    await user.type(screen.getByLabelText('Password'), 'a few plain words');
    await user.click(screen.getByRole('button', { name: 'Sign in' }));
    await vi.waitFor(() => expect(onEntered).toHaveBeenCalledWith('/findings/7?kind=stale'));
    expect(calls.at(-1)).toEqual({ name: 'SignIn', variables: { email: 'june@larkspur.example', password: 'a few plain words' } });
  });

  it('asks for what is missing before anything is sent', async () => {
    const { user, calls } = page(signedIn);
    await user.click(await screen.findByRole('button', { name: 'Sign in' }));
    expect(screen.getByRole('alert').textContent).toContain('2 things need a look');
    expect(calls.map(({ name }) => name)).toEqual(['SignInPage']);
  });

  it.each([
    ['WRONG_EMAIL_OR_PASSWORD', null, /do not fit each other/],
    ['TOO_MANY_TRIES', 130, /Wait 3 min/],
    ['NO_ORGANIZATION', null, /belong to no organization/],
    ['SOMETHING_LATER', null, /SOMETHING_LATER/],
  ])('says why it stays shut: %s', async (code, retryInSeconds, words) => {
    const { user, onEntered } = page({ __typename: 'SignInRefused', code, retryInSeconds });
    await user.type(await screen.findByLabelText('E-mail'), 'june@larkspur.example');
    await user.type(screen.getByLabelText('Password'), 'wrong{Enter}');
    expect((await screen.findByRole('alert')).textContent).toMatch(words);
    expect(onEntered).not.toHaveBeenCalled();
  });

  it('has the demonstration’s doors, one press each, in the visitor’s language', async () => {
    const { user, calls, onEntered } = page(signedIn, { language: 'es' });
    await user.click(await screen.findByRole('button', { name: /Entrar como propietario de Larkspur Grounds/ }));
    await vi.waitFor(() => expect(onEntered).toHaveBeenCalledWith('/'));
    expect(calls.at(-1)?.variables).toEqual({ email: door.email, password: door.password });
  });

  it('founds the first organization on an empty server', async () => {
    const { user, calls, onEntered } = page(signedIn, { empty: true });
    await user.type(await screen.findByLabelText('Name of the organization'), 'Larkspur Grounds');
    await user.type(screen.getByLabelText('Your name'), 'June');
    await user.type(screen.getByLabelText('E-mail'), 'june@larkspur.example');
    await user.type(screen.getByLabelText('Password'), 'short');
    await user.click(screen.getByRole('button', { name: 'Found the organization' }));
    expect(screen.getByRole('alert').textContent).toContain('5 characters; at least 8');
    await user.type(screen.getByLabelText('Password'), ' and then long');
    await user.click(screen.getByRole('button', { name: 'Found the organization' }));
    await vi.waitFor(() => expect(onEntered).toHaveBeenCalledWith('/'));
    expect(calls.at(-1)?.variables).toMatchObject({ name: 'Larkspur Grounds', personName: 'June' });
  });
});

describe('an invitation', () => {
  const at = '/invitation/link-1';
  const invitation = (link: unknown, acceptInvitation: unknown) => {
    const onEntered = vi.fn();
    return {
      ...drawPage(<InvitationPage onEntered={onEntered} />, {
        at,
        route: '/invitation/:link',
        answers: { invitation: link, acceptInvitation },
      }),
      onEntered,
    };
  };
  const invited = { email: 'ana@larkspur.example', name: 'Ana', organizationName: 'Larkspur Grounds', language: 'es' };

  it('says who invites, and takes a password', async () => {
    const { user, calls, onEntered } = invitation(invited, signedIn);
    await screen.findByRole('heading', { name: 'Larkspur Grounds invites you, Ana' });
    await user.type(screen.getByLabelText('Password'), 'a few plain words');
    await user.click(screen.getByRole('button', { name: 'Accept and sign in' }));
    await vi.waitFor(() => expect(onEntered).toHaveBeenCalled());
    expect(calls.at(-1)?.variables).toEqual({ link: 'link-1', password: 'a few plain words' });
  });

  it('says when it is no longer good, and when the server refuses', async () => {
    invitation(null, signedIn);
    await screen.findByRole('heading', { name: 'This invitation is no longer good' });
    cleanup();
    const { user, onEntered } = invitation(invited, () => {
      throw refusal('INVITATION_NOT_VALID', 'This invitation was used.');
    });
    await user.type(await screen.findByLabelText('Password'), 'a few plain words{Enter}');
    expect((await screen.findByRole('alert')).textContent).toContain('This invitation was used.');
    expect(onEntered).not.toHaveBeenCalled();
  });
});
