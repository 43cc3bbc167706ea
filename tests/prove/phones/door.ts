import type { Browser, BrowserContext, Page } from 'playwright-core';

export type Ask = (query: string, variables?: Record<string, unknown>) => Promise<Record<string, any>>;

/** Somebody of the demonstration in a browser of their own. */
export interface Person {
  readonly context: BrowserContext;
  readonly page: Page;
  readonly ask: Ask;
}

const COMPANY = 'Larkspur Grounds';

/** Asks the product as the person whose browser this is; the page need not be one of the product's. */
const askOf =
  (context: BrowserContext, url: string): Ask =>
  async (query, variables = {}) => {
    const response = await context.request.post(`${url}/graphql`, {
      data: { query, variables },
      headers: { 'x-rillbook-request': '1' },
      // A line kept open to a server that was killed meanwhile: nothing of it was heard.
      maxRetries: 2,
    });
    const { data, errors } = (await response.json()) as { data: Record<string, unknown>; errors?: unknown };
    if (errors) throw new Error(`${query}: ${JSON.stringify(errors)}`);
    return data;
  };

/** Comes in through the demonstration's own door, by the beginning of an e-mail address. */
export async function comeIn(browser: Browser, url: string, who: string, language = 'en'): Promise<Person> {
  const context = await browser.newContext({ baseURL: url, viewport: { width: 390, height: 844 }, locale: 'en-US' });
  const ask = askOf(context, url);
  const { signInPage } = await ask('{ signInPage { demo { email password organizationName } } }');
  const door = signInPage.demo.find(
    (one: { email: string; organizationName: string }) => one.organizationName === COMPANY && one.email.startsWith(who),
  );
  await ask('mutation($email: String!, $password: String!) { signIn(email: $email, password: $password) { __typename } }', {
    email: door.email,
    password: door.password,
  });
  await ask(`mutation { chooseLanguage(language: ${language}) { person { language } } }`);
  return { context, ask, page: await context.newPage() };
}
