import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { type Browser, type BrowserContext, type BrowserContextOptions, chromium as playwright } from 'playwright-core';

const FLAGS = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];
const SYSTEM = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/usr/bin/google-chrome-stable',
  '/opt/google/chrome/chrome',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
];
/** What unpacking changes in this process's environment, and puts back. */
const CHANGED = ['TMPDIR', 'AWS_EXECUTION_ENV', 'LD_LIBRARY_PATH', 'FONTCONFIG_PATH', 'HOME'];
const CACHE = path.resolve(import.meta.dirname, '../../node_modules/.cache/rillbook-browser');

interface Found {
  readonly executablePath: string;
  readonly env: Record<string, string>;
}

/** Starts a Chromium: the machine's own where there is one (or CHROMIUM_PATH), else the one inside the npm package. */
export async function launchBrowser(): Promise<Browser> {
  const { executablePath, env } = systemBrowser() ?? (await packagedBrowser());
  return playwright.launch({ executablePath, args: FLAGS, env: { ...inherited(), ...env } });
}

/** The same with a folder of its own, which lasts: what a phone keeps is there when it is started again. */
export async function launchLasting(folder: string, options: BrowserContextOptions): Promise<BrowserContext> {
  const { executablePath, env } = systemBrowser() ?? (await packagedBrowser());
  return playwright.launchPersistentContext(folder, { ...options, executablePath, args: FLAGS, env: { ...inherited(), ...env } });
}

function systemBrowser(): Found | null {
  const named = process.env['CHROMIUM_PATH'];
  if (named && !existsSync(named)) throw new Error(`CHROMIUM_PATH is ${named}, and nothing is there. Correct it or unset it.`);
  const executablePath = named ?? SYSTEM.find((place) => existsSync(place));
  return executablePath ? { executablePath, env: {} } : null;
}

async function packagedBrowser(): Promise<Found> {
  const home = await unpacked();
  const executablePath = path.join(home, 'chromium');
  const env: Record<string, string> = existsSync('/etc/fonts/fonts.conf') ? {} : { FONTCONFIG_FILE: path.join(home, 'fonts.conf') };
  // The package brings the shared libraries a bare machine lacks; they are used only there, for the machine's own are newer.
  const tries: readonly Record<string, string>[] = [{}, { LD_LIBRARY_PATH: path.join(home, 'al2023/lib') }];
  for (const libraries of tries) {
    const tried = spawnSync(executablePath, ['--no-sandbox', '--version'], {
      env: { ...inherited(), ...env, ...libraries },
      encoding: 'utf8',
    });
    if (tried.status === 0) return { executablePath, env: { ...env, ...libraries } };
    if (!/shared librar/.test(tried.stderr))
      throw new Error(`The packaged Chromium does not start: ${tried.stderr || String(tried.error)}`);
  }
  throw new Error('The packaged Chromium lacks shared libraries. Install Chromium, or set CHROMIUM_PATH to one that starts.');
}

/** Unpacks once, beside its final place, so that two test processes never see half a browser. */
async function unpacked(): Promise<string> {
  if (existsSync(path.join(CACHE, 'chromium'))) return CACHE;
  mkdirSync(path.dirname(CACHE), { recursive: true });
  const making = mkdtempSync(`${CACHE}-`);
  const before = CHANGED.map((name) => [name, process.env[name]] as const);
  // The package unpacks into the temporary folder, and its libraries only where it believes to be on Amazon Linux.
  process.env['TMPDIR'] = making;
  process.env['AWS_EXECUTION_ENV'] = 'AWS_Lambda_nodejs22.x';
  try {
    const { default: packaged } = await import('@sparticuz/chromium');
    await packaged.executablePath();
  } finally {
    for (const [name, value] of before) restore(name, value);
  }
  const fonts = `<?xml version="1.0"?><!DOCTYPE fontconfig SYSTEM "fonts.dtd"><fontconfig><dir>${CACHE}/fonts</dir><cachedir>${CACHE}/fonts-cache</cachedir></fontconfig>`;
  writeFileSync(path.join(making, 'fonts.conf'), fonts);
  try {
    renameSync(making, CACHE);
  } catch (problem) {
    rmSync(making, { recursive: true, force: true });
    if (!existsSync(path.join(CACHE, 'chromium'))) throw problem;
  }
  return CACHE;
}

function restore(name: string, value: string | undefined): void {
  if (value === undefined) delete process.env[name];
  else process.env[name] = value;
}

const inherited = (): Record<string, string> =>
  Object.fromEntries(Object.entries(process.env).filter((entry): entry is [string, string] => entry[1] !== undefined));
