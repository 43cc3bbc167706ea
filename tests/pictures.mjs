// Takes the pictures of docs/pages.md from the running demonstration: `npm run pictures`.
import { spawn } from 'node:child_process';
import { chmodSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import ts from 'typescript';

const top = path.resolve(import.meta.dirname, '..');
const out = path.join(top, 'docs/pictures');
const DESK = { width: 1280, height: 900 };
const PHONE = { width: 390, height: 844 };

/** The tests' own browser; Node 20 does not read TypeScript, so it is stripped beside the original. */
async function launch() {
  const source = path.join(top, 'tests/support/browser.ts');
  const stripped = path.join(top, 'tests/support/.browser.mjs');
  writeFileSync(
    stripped,
    ts.transpileModule(readFileSync(source, 'utf8'), { compilerOptions: { module: 'esnext', target: 'es2022' } }).outputText,
  );
  try {
    return await (await import(stripped)).launchBrowser();
  } finally {
    rmSync(stripped);
  }
}

/** Starts the product with its demonstration in a folder of its own. */
function start(folder) {
  const child = spawn(process.execPath, [path.join(top, 'apps/api/dist/main.js')], {
    env: { ...process.env, DATA_DIR: path.join(folder, 'data'), PORT: '0' },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  return new Promise((resolve, reject) => {
    let said = '';
    child.once('exit', (code) => reject(new Error(`the product ended with ${code}: ${said}`)));
    child.stdout.on('data', (piece) => {
      said += piece;
      const found = /http:\/\/localhost:\d+/.exec(said);
      if (found) resolve({ child, url: found[0] });
    });
  });
}

/** What is pictured: a name, the role that sees it, how to get there. */
const findOf = (field) => async (page) => {
  const answer = await page.evaluate(
    async (query) =>
      (
        await fetch('/graphql', { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify({ query }) })
      ).json(),
    field,
  );
  return answer.data;
};
const quail = async (page) => (await findOf('{ properties(text: "Quail Commons") { id } }')(page)).properties[0].id;
const quailAndController = async (page) => {
  const [{ id, controllers }] = (await findOf('{ properties(text: "Quail Commons") { id controllers { id } } }')(page)).properties;
  return `${id}/${controllers[0].id}`;
};
const supplier = async (page) => (await findOf('{ waterSuppliers { id } }')(page)).waterSuppliers[0].id;
const seenByHours = async (page) =>
  (await findOf('{ findings(state: ["open"]) { id kind usageStrip { meterId } } }')(page)).findings
    .filter(({ usageStrip }) => usageStrip)
    .sort((a, b) => Number(b.kind === 'steady flow') - Number(a.kind === 'steady flow'))[0].id;
const firstStop = async (page) =>
  (await findOf('{ today { stops { id workOrders { kind plannedSettings { id } } } } }')(page)).today
    .flatMap((route) => route.stops)
    .sort(
      (a, b) => Number(b.workOrders.some((order) => order.plannedSettings)) - Number(a.workOrders.some((order) => order.plannedSettings)),
    )[0].id;

const PICTURES = [
  ['sign-in', null, '/sign-in'],
  ['portfolio', 'owner', '/'],
  ['property', 'owner', async (page) => `/properties/${await quail(page)}`],
  ['card', 'office', async (page) => `/cabinet/${await quailAndController(page)}`],
  ['month', 'office', '/month'],
  ['finding', 'office', '/findings'],
  ['finding-hours', 'office', async (page) => `/findings/${await seenByHours(page)}`],
  ['week', 'office', '/findings/week'],
  ['usefulness', 'office', '/findings/usefulness'],
  ['routes', 'office', '/routes'],
  ['month-plan', 'office', '/routes/month'],
  ['phones', 'office', '/routes/phones'],
  ['rule-change', 'office', async (page) => `/rule-change/${await supplier(page)}`],
  ['reports', 'office', '/reports'],
  ['company-month', 'office', '/reports/company'],
  ['setup-brand', 'office', '/setup/reports'],
  ['import', 'office', '/setup'],
  ['setup-properties', 'office', '/setup/properties'],
  ['setup-people', 'owner', '/setup/people'],
  ['today', 'crewLead', '/today'],
  ['stop', 'crewLead', async (page) => `/today/${await firstStop(page)}`],
  ['stop-meter', 'crewLead', async (page) => `/today/${await firstStop(page)}?step=meter`],
  ['stop-settings', 'crewLead', async (page) => `/today/${await firstStop(page)}?step=settings`],
  ['stop-zones', 'crewLead', async (page) => `/today/${await firstStop(page)}?step=zones`],
  ['stop-tests', 'crewLead', async (page) => `/today/${await firstStop(page)}?step=tests`],
  ['stop-done', 'crewLead', async (page) => `/today/${await firstStop(page)}?step=done`],
  ['phone', 'crewLead', '/today/phone'],
  ['water', 'client', '/water'],
];
/** Pages that say something only when it has rained: the demonstration's last days are dry. */
const AFTER_RAIN = [['rain', 'office', '/rain']];
/** Pages that only a phone shows. */
const isOfThePhone = (name) => name.startsWith('stop') || name === 'today' || name === 'phone';
const LOOKS = [
  { suffix: '', viewport: DESK, colorScheme: 'light', language: 'en', of: (name) => !isOfThePhone(name) },
  { suffix: '-phone', viewport: PHONE, colorScheme: 'light', language: 'en', of: () => true },
  {
    suffix: '-dark',
    viewport: DESK,
    colorScheme: 'dark',
    language: 'en',
    of: (name) => ['portfolio', 'property', 'finding', 'finding-hours', 'month', 'routes', 'month-plan'].includes(name),
  },
  {
    suffix: '-es',
    viewport: DESK,
    colorScheme: 'light',
    language: 'es',
    of: (name) =>
      [
        'portfolio',
        'property',
        'finding',
        'finding-hours',
        'month',
        'routes',
        'month-plan',
        'rain',
        'rule-change',
        'reports',
        'company-month',
        'import',
      ].includes(name),
  },
  { suffix: '-phone-es', viewport: PHONE, colorScheme: 'light', language: 'es', of: isOfThePhone },
];

/** Signs in through the demonstration's own door. */
async function enter(context, url, role) {
  const page = await context.newPage();
  await page.goto(`${url}/sign-in`);
  const { signInPage } = await findOf('{ signInPage { demo { email password role organizationName } } }')(page);
  const door = signInPage.demo.find((one) => one.role === role && one.organizationName.startsWith('Larkspur'));
  const sent = await page.evaluate(
    async (variables) =>
      (
        await fetch('/graphql', {
          method: 'POST',
          headers: { 'content-type': 'application/json' },
          body: JSON.stringify({
            query: 'mutation($email: String!, $password: String!) { signIn(email: $email, password: $password) { __typename } }',
            variables,
          }),
        })
      ).json(),
    { email: door.email, password: door.password },
  );
  if (sent.data?.signIn.__typename !== 'SignedIn') throw new Error(`no way in as ${role}: ${JSON.stringify(sent)}`);
  return page;
}

/** Takes the pictures that are wished for in one look. */
async function take(look, pictures) {
  for (const [name, role, address] of pictures.filter(([one]) => look.of(one) && (wishes.length === 0 || wishes.includes(one)))) {
    const context = await browser.newContext({
      viewport: look.viewport,
      colorScheme: look.colorScheme,
      locale: look.language === 'es' ? 'es-US' : 'en-US',
    });
    const page = role ? await enter(context, url, role) : await context.newPage();
    if (role) await findOf(`mutation { chooseLanguage(language: ${look.language}) { person { language } } }`)(page);
    await page.goto(url + (typeof address === 'string' ? address : await address(page)), { waitUntil: 'networkidle' });
    await page.waitForTimeout(500);
    await page.screenshot({ path: path.join(out, `${name}${look.suffix}.png`), fullPage: true });
    console.log(`${name}${look.suffix}`);
    await context.close();
  }
}

/** A rainy day at every station, on the eve of the day on which the demonstration stands. */
async function itRained() {
  const context = await browser.newContext();
  const page = await enter(context, url, 'office');
  const { today, weatherStations } = await findOf('{ today { day } weatherStations { id } }')(page);
  const [{ day }] = today;
  const eve = new Date(Date.parse(day) - 86_400_000).toISOString().slice(0, 10);
  for (const { id } of weatherStations)
    await findOf(
      `mutation { recordWeatherDay(input: { stationId: "${id}", day: "${eve}", tmaxC: 21, tminC: 12, rainMm: 31, givenEtoMm: 1.4 }) { day } }`,
    )(page);
  await context.close();
}

const folder = mkdtempSync(path.join(tmpdir(), 'rillbook-pictures-'));
chmodSync(folder, 0o755);
mkdirSync(out, { recursive: true });
const wishes = process.argv.slice(2);
const { child, url } = await start(folder);
const browser = await launch();
try {
  for (const look of LOOKS) await take(look, PICTURES);
  await itRained();
  for (const look of LOOKS) await take(look, AFTER_RAIN);
} finally {
  await browser.close();
  child.removeAllListeners('exit');
  const ended = new Promise((resolve) => child.once('exit', resolve));
  child.kill('SIGTERM');
  await ended;
  rmSync(folder, { recursive: true, force: true });
}
