import { useMutation } from '@apollo/client/react';
import { useIntl } from 'react-intl';
import { Navigate, Outlet, useLocation, useNavigate } from 'react-router';
import { graphql } from '../graphql/__generated__/gql.js';
import type { MessageId } from '../i18n/catalogue.js';
import { NotFoundPage } from '../page/NotFoundPage.js';
import { unsentIn, wipeStore } from '../offline/leave.js';
import { storeName } from '../offline/store.js';
import { forgetViewer } from '../session/remembered-viewer.js';
import { mayDo, useViewer, type Viewer } from '../session/viewer.js';
import { useToast } from '../ui/dialogs/Toasts.js';
import { PageFrame } from '../ui/frame/PageFrame.js';

const chooseLanguageDocument = graphql(`
  mutation ChooseLanguage($language: Language!) {
    chooseLanguage(language: $language) {
      memberId
      person {
        id
        language
      }
    }
  }
`);

const signOutDocument = graphql(`
  mutation SignOut {
    signOut
  }
`);

interface Page {
  readonly to: string;
  readonly words: MessageId;
  /** Who has it: a permission in the server's words. */
  readonly permission: string;
}

const PAGES: readonly Page[] = [
  { to: '/', words: 'frame.portfolio', permission: 'read portfolio' },
  { to: '/month', words: 'frame.month', permission: 'read portfolio' },
  { to: '/findings', words: 'frame.findings', permission: 'read findings' },
  { to: '/routes', words: 'frame.routes', permission: 'assign work' },
  { to: '/reports', words: 'frame.reports', permission: 'write reports' },
  { to: '/today', words: 'frame.today', permission: 'record fieldwork' },
  { to: '/setup', words: 'frame.setup', permission: 'write portfolio' },
];

/** The frame of every page but those of the field, with the pages that this person has. */
export function Desk() {
  const intl = useIntl();
  const viewer = useViewer();
  const toast = useToast();
  const navigate = useNavigate();
  const [chooseLanguage] = useMutation(chooseLanguageDocument);
  const [signOut] = useMutation(signOutDocument);
  const failed = (): void => toast({ words: intl.formatMessage({ id: 'parts.noAnswer' }) });
  const other = viewer.person.language === 'es' ? 'en' : 'es';
  const leave = async (): Promise<void> => {
    const store = storeName(viewer.organization.id, viewer.memberId);
    // What only this device has is looked at first.
    if ((await unsentIn(store)) > 0) return void navigate('/today/phone');
    await signOut();
    forgetViewer();
    await wipeStore(store);
    // A full load leaves nothing of this person in memory.
    window.location.assign('/sign-in');
  };
  return (
    <PageFrame
      links={linksOf(viewer).map(({ to, words }) => ({ to, words: intl.formatMessage({ id: words }) }))}
      organization={viewer.organization.name}
      person={viewer.person.name}
      onOtherLanguage={() => void chooseLanguage({ variables: { language: other } }).catch(failed)}
      onSignOut={() => void leave().catch(failed)}
    >
      <OwnPage />
    </PageFrame>
  );
}

/** A page that this person's role does not have is answered like one that never was. */
function OwnPage() {
  const viewer = useViewer();
  const { pathname } = useLocation();
  if (pathname === '/water' && viewer.role !== 'client') return <NotFoundPage />;
  const page = PAGES.find(({ to }) => to !== '/' && (pathname === to || pathname.startsWith(`${to}/`)));
  return page && !mayDo(viewer, page.permission) ? <NotFoundPage /> : <Outlet />;
}

function linksOf(viewer: Viewer): readonly Pick<Page, 'to' | 'words'>[] {
  if (viewer.role === 'client') return [{ to: '/water', words: 'frame.water' }];
  return PAGES.filter(({ permission }) => mayDo(viewer, permission));
}

/** The first page: each role has its own. */
export function FirstPage() {
  const viewer = useViewer();
  const { search } = useLocation();
  if (viewer.role === 'client') return <Navigate to={`/water${search}`} replace />;
  if (!mayDo(viewer, 'read portfolio')) return <Navigate to={`/today${search}`} replace />;
  return <Outlet />;
}
