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
    publicUrl: environment['PUBLIC_URL']?.replace(/\/+$/, '') || null,
    outbox: path.join(folder, 'rillbook-outbox'),
  };
}
