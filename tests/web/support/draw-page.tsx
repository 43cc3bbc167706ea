import { ApolloProvider } from '@apollo/client/react';
import { render } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import type { ReactNode } from 'react';
import { MemoryRouter, Route, Routes, useLocation } from 'react-router';
import { LanguageProvider } from '../../../apps/web/src/i18n/LanguageProvider.js';
import type { Language } from '../../../apps/web/src/i18n/numbers.js';
import type { UnitSystem } from '../../../apps/web/src/i18n/quantities.js';
import { type Viewer, ViewerContext } from '../../../apps/web/src/session/viewer.js';
import { ToastProvider } from '../../../apps/web/src/ui/dialogs/Toasts.js';
import { DisplayProvider } from '../../../apps/web/src/ui/theme/DisplayProvider.js';
import { type Answers, fakeServer } from './fake-server.js';

const everything = [
  'read portfolio',
  'write portfolio',
  'read property',
  'read findings',
  'decide findings',
  'assign work',
  'approve work',
  'record fieldwork',
  'read reports',
  'write reports',
];

/** Somebody of the office in an invented organization. */
export const viewerOf = (given: Partial<Viewer> = {}): Viewer =>
  ({
    __typename: 'Me',
    memberId: 'me',
    role: 'office',
    permissions: everything,
    clientId: null,
    crewIds: [],
    person: { __typename: 'Person', id: 'p-june', name: 'June Halvorsen', email: 'june@larkspur.example', language: 'en' },
    organization: {
      __typename: 'Organization',
      id: 'o-larkspur',
      name: 'Larkspur Grounds',
      units: 'us',
      language: 'en',
      timeZone: 'America/Los_Angeles',
      currency: 'USD',
      today: '2026-09-24',
      isDemo: false,
      version: 1,
    },
    memberships: [],
    ...given,
  }) as Viewer;

interface Options {
  readonly answers?: Answers;
  /** The address, and the pattern that it is an instance of. */
  readonly at?: string;
  readonly route?: string;
  readonly language?: Language;
  readonly units?: UnitSystem;
  readonly viewer?: Viewer;
}

function Address({ onChange }: { readonly onChange: (address: string) => void }) {
  const { pathname, search } = useLocation();
  onChange(pathname + search);
  return null;
}

/** Draws a page as the product does: behind the door, in a language and a system of units, at an address, before a server made of answers. */
export function drawPage(
  page: ReactNode,
  { answers = {}, at = '/', route = '*', language = 'en', units = 'us', viewer = viewerOf() }: Options = {},
) {
  const server = fakeServer(answers);
  let address = at;
  const drawn = render(
    <DisplayProvider>
      <LanguageProvider language={language} units={units} currency="USD" timeZone="America/Los_Angeles">
        <ViewerContext value={viewer}>
          <ToastProvider>
            <ApolloProvider client={server.client}>
              <MemoryRouter initialEntries={[at]} useTransitions={false}>
                <Address
                  onChange={(now) => {
                    address = now;
                  }}
                />
                <Routes>
                  <Route path={route} element={page} />
                  <Route path="*" element={<p>elsewhere</p>} />
                </Routes>
              </MemoryRouter>
            </ApolloProvider>
          </ToastProvider>
        </ViewerContext>
      </LanguageProvider>
    </DisplayProvider>,
  );
  return { ...drawn, ...server, user: userEvent.setup(), address: () => address };
}
