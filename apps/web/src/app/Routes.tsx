import { type ComponentType, lazy, Suspense, useState } from 'react';
import { Navigate, Outlet, Route, Routes, useLocation } from 'react-router';
import { mayDo, useViewer } from '../session/viewer.js';
import { LoadingState } from '../ui/states/States.js';
import { Desk, FirstPage } from './Desk.js';
import { NotFoundPage } from '../page/NotFoundPage.js';
import { PageBoundary } from './PageBoundary.js';
import { deskPages, doorPages, fetchedAhead, fieldFrame, fieldPages, type PageFile, portfolioPage } from './pages.js';
import { SignedIn } from './SignedIn.js';
import { useBeginning } from './use-beginning.js';

/** A page by its file: drawn at once where the file was fetched ahead, and waited for where not. */
function page<Props extends object>(file: () => Promise<ComponentType<Props>>): ComponentType<Props> {
  const Awaited = lazy(async () => ({ default: await file() }));
  return function Page(props: Props) {
    const [Shown] = useState<ComponentType<Props>>(() => fetchedAhead(file) ?? Awaited);
    return <Shown {...props} />;
  };
}

const routesOf = (pages: Readonly<Record<string, PageFile>>) =>
  Object.entries(pages).map(([path, file]) => {
    const Page = page(file);
    return <Route key={path} path={path} element={<Page />} />;
  });

const doors = routesOf(doorPages);
const field = routesOf(fieldPages);
const desk = routesOf(deskPages);
const Portfolio = page(portfolioPage);

/** Every address of the product. Doors are open to all; the rest stands behind them. */
export function AppRoutes() {
  useBeginning();
  return (
    <Routes>
      <Route element={<OnePage />}>
        {doors}
        <Route element={<SignedIn />}>
          <Route element={<OnePhone />}>{field}</Route>
          <Route element={<Desk />}>
            <Route element={<OnePage />}>
              <Route path="/" element={<FirstPage />}>
                <Route index element={<Portfolio />} />
              </Route>
              {desk}
              <Route path="*" element={<NotFoundPage />} />
            </Route>
          </Route>
        </Route>
      </Route>
    </Routes>
  );
}

const Phone = page(fieldFrame);

/** The phone stays open from one page of the field to the next. Who does no fieldwork is led to their own first page. */
function OnePhone() {
  const viewer = useViewer();
  if (!mayDo(viewer, 'record fieldwork')) return <Navigate to="/" replace />;
  return (
    <Phone>
      <Outlet />
    </Phone>
  );
}

/** A page that waits for its file, or breaks, leaves the frame around it standing. */
function OnePage() {
  const { pathname } = useLocation();
  return (
    <PageBoundary address={pathname}>
      <Suspense fallback={<LoadingState />}>
        <Outlet />
      </Suspense>
    </PageBoundary>
  );
}
