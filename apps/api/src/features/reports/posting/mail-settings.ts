import path from 'node:path';

/** How mail leaves this server, as its environment says. */
export interface MailSettings {
  /** null where none is set: mails are written into the outbox folder */
  readonly smtpUrl: string | null;
  readonly from: string;
  /** the address at which people reach the product; null where it is not known, and links are left out */
  readonly publicUrl: string | null;
  readonly outbox: string;
}

const checkout = path.resolve(import.meta.dirname, '../../../../../..');

/** Read anew each time: a test may set them. */
export function mailSettings(environment: NodeJS.ProcessEnv = process.env): MailSettings {
  const folder = path.resolve(environment['DATA_DIR'] || path.join(checkout, '.data'));
  return {
    smtpUrl: environment['SMTP_URL'] || null,
    from: environment['SMTP_FROM'] || 'reports@localhost',
    publicUrl: addressOf(environment['PUBLIC_URL']),
    outbox: path.join(folder, 'rillbook-outbox'),
  };
}

/** An address of the web without the stroke at its end; null where none is set, or it is none. */
function addressOf(written: string | undefined): string | null {
  if (!written || !URL.canParse(written)) return null;
  return /^https?:$/.test(new URL(written).protocol) ? written.replace(/\/+$/, '') : null;
}

/** What whoever runs the server should set, in sentences; none where mail can leave as it should. */
export function mailWarnings(environment: NodeJS.ProcessEnv = process.env): string[] {
  const { smtpUrl, publicUrl } = mailSettings(environment);
  if (smtpUrl === null || publicUrl !== null) return [];
  const found = environment['PUBLIC_URL'] ? `PUBLIC_URL is "${environment['PUBLIC_URL']}", which is no address` : 'PUBLIC_URL is not set';
  return [
    `Mail leaves by SMTP_URL, but ${found}: mails of reports carry no link by which a recipient wants no more. Set PUBLIC_URL to the address at which people reach this server, such as https://water.example.org.`,
  ];
}
