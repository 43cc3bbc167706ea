import type { ComponentType } from 'react';
import { matchPath } from 'react-router';
import { openAhead, storeName } from '../offline/store.js';
import { rememberedMember } from '../session/remembered-viewer.js';

/** Fetches a page's file when its address is first visited. */
export type PageFile = () => Promise<ComponentType>;

// Give a page its own file here: async () => (await import('../features/findings/FindingsPage.js')).FindingsPage

/** Open to all. */
export const doorPages: Readonly<Record<string, PageFile>> = {
  '/sign-in': async () => (await import('../features/identity/SignInPage.js')).SignInPage,
  '/invitation/:link': async () => (await import('../features/identity/InvitationPage.js')).InvitationPage,
};

/** In the desk's frame. */
export const deskPages: Readonly<Record<string, PageFile>> = {
  '/properties/:id': async () => (await import('../features/property/PropertyPage.js')).PropertyPage,
  '/cabinet/:propertyId/:controllerId': async () => (await import('../features/property/plan/card/CabinetCardPage.js')).CabinetCardPage,
  '/findings/usefulness': async () => (await import('../features/findings/precision/PrecisionPage.js')).PrecisionPage,
  '/findings/week': async () => (await import('../features/findings/week/WeekPage.js')).WeekPage,
  '/findings/:id?': async () => (await import('../features/findings/FindingsPage.js')).FindingsPage,
  '/month': async () => (await import('../features/overview/month/MonthPage.js')).MonthPage,
  '/rule-change/:supplierId': async () => (await import('../features/property/rule-change/RuleChangePage.js')).RuleChangePage,
  '/rain': async () => (await import('../features/rain/RainPausePage.js')).RainPausePage,
  '/routes': async () => (await import('../features/fieldwork/routes/RoutesPage.js')).RoutesPage,
  '/reports': async () => (await import('../features/reports/ReportsPage.js')).ReportsPage,
  '/reports/company': async () => (await import('../features/reports/company/CompanyMonthPage.js')).CompanyMonthPage,
  '/routes/month': async () => (await import('../features/fieldwork/routes/month/MonthPlanPage.js')).MonthPlanPage,
  '/routes/phones': async () => (await import('../features/fieldwork/phones/PhonesPage.js')).PhonesPage,
  '/routes/sheet': async () => (await import('../features/fieldwork/routes/sheet/RouteSheetPage.js')).RouteSheetPage,
  '/setup/*': async () => (await import('../features/setup/frame/SetupPage.js')).SetupPage,
  '/water': async () => (await import('../features/water/WaterPage.js')).WaterPage,
};

/** The first page of those who read the portfolio. */
export const portfolioPage: PageFile = async () => (await import('../features/overview/portfolio/PortfolioPage.js')).PortfolioPage;

const fieldPhone = () => import('../features/fieldwork/device/FieldPhone.js');

/** The phone of the person who is signed in, around every page of the field. */
export const fieldFrame = async () => (await fieldPhone()).FieldPhone;

/** Pages of the field bring their own frame. */
export const fieldPages: Readonly<Record<string, PageFile>> = {
  '/today': async () => (await import('../features/fieldwork/today/TodayPage.js')).TodayPage,
  '/today/phone': async () => (await import('../features/fieldwork/phone/PhonePage.js')).PhonePage,
  '/today/:stopId': async () => (await import('../features/fieldwork/stop/StopPage.js')).StopPage,
};

/** A phone asks for one of three: no pattern is tried for it. */
function fieldFileAt(pathname: string): PageFile | null {
  const [, first, second, third] = pathname.split('/');
  if (first !== 'today' || third) return null;
  return fieldPages[`/today/${second ?? ''}`] ?? fieldPages[second ? '/today/:stopId' : '/today']!;
}

/** The files that an address shows: its page's, and around a page of the field the phone's. */
export function filesAt(pathname: string): readonly (() => Promise<unknown>)[] {
  const field = fieldFileAt(pathname);
  if (field) return [field, fieldFrame];
  const pages: Readonly<Record<string, PageFile>> = { ...doorPages, ...deskPages, '/': portfolioPage };
  const path = Object.keys(pages).find((pattern) => matchPath(pattern, pathname));
  return path === undefined ? [] : [pages[path]!];
}

const here = new Map<unknown, unknown>();

/** What came of a file that was fetched ahead; null where it has not come. A page that is here is drawn without waiting. */
export const fetchedAhead = <Shown>(file: () => Promise<Shown>): Shown | null => (here.get(file) as Shown | undefined) ?? null;

const keepHere = async (file: () => Promise<unknown>): Promise<void> => void here.set(file, await file());

/** A store that another page holds open may never answer: then the page is drawn all the same, and waits for it in sight. [ms] */
const LONGEST_UNDRAWN = 3_000;

/**
 * Begins to fetch what an address will show, before it is known who asks: a page opened cold has its files when they are wanted, and a page of the
 * field what this phone holds.
 * The router fetches them again where this fails, and says so.
 *
 * @returns when a page of the field can be drawn whole, where its files are on this device; at once for all others
 */
export async function fetchAhead(pathname: string): Promise<void> {
  const fetching = Promise.allSettled(filesAt(pathname).map(keepHere));
  const member = fieldFileAt(pathname) && rememberedMember();
  if (!member) return;
  openAhead(storeName(member.organizationId, member.memberId));
  if (!navigator.serviceWorker?.controller) return;
  const whole = async (): Promise<void> => {
    await fetching;
    await (await fieldPhone()).openFieldPhone();
  };
  await Promise.race([whole(), new Promise<void>((resolve) => void setTimeout(resolve, LONGEST_UNDRAWN))]);
}
