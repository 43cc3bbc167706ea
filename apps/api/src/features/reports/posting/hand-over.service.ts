import { mkdir, open, rename } from 'node:fs/promises';
import path from 'node:path';
import { Injectable } from '@nestjs/common';
import { createTransport } from 'nodemailer';
import { log } from '../../../platform/problems/log.js';
import { mailSettings } from './mail-settings.js';
import { type Delivery, MOST_LETTERS } from './post.js';
import type { ReportMessage } from './report-message.js';
import { deliverBySmtp } from './smtp-session.js';

/** The code of an answer: whatever went wrong on this server, before the mail left it. */
const NOT_HANDED_OVER = 'not-handed-over';

/** Hands a mail over: to the server that is set, else into the outbox folder. How it ended is its answer. */
@Injectable()
export class HandOver {
  /** What fails here fails before the mail has left this server: it is tried again, and nobody is asked whether it arrived. */
  async run(message: ReportMessage, organizationId: string, mailId: string): Promise<Delivery> {
    try {
      return await handedOver(message, organizationId, mailId);
    } catch (problem) {
      const reason = problem instanceof Error ? problem.message : String(problem);
      log.warn({ message: reason, mailId }, 'a mail could not be handed over');
      return { kind: 'again', answer: `${NOT_HANDED_OVER}: ${reason.slice(0, MOST_LETTERS)}` };
    }
  }
}

async function handedOver(message: ReportMessage, organizationId: string, mailId: string): Promise<Delivery> {
  const { smtpUrl, outbox } = mailSettings();
  const bytes = await bytesOf(message);
  if (smtpUrl === null) return intoFolder(bytes, path.join(outbox, organizationId), mailId);
  return deliverBySmtp(smtpUrl, { from: message.from.address, to: message.to }, bytes);
}

async function bytesOf({ list, replyTo, ...rest }: ReportMessage): Promise<Buffer> {
  const stop = list
    ? {
        list: { unsubscribe: { url: list.unsubscribe, comment: 'stop' } },
        // One press in the mail program only where nobody reads it on the way (RFC 8058, section 3.1).
        ...(list.unsubscribe.startsWith('https:') && { headers: { 'List-Unsubscribe-Post': 'List-Unsubscribe=One-Click' } }),
      }
    : {};
  const composed = await createTransport({ streamTransport: true, buffer: true, newline: 'windows' }).sendMail({
    ...rest,
    ...(replyTo ? { replyTo } : {}),
    attachments: [...rest.attachments],
    ...stop,
  });
  return (composed as unknown as { message: Buffer }).message;
}

/** Written beside its final name, so that half a mail never has it. */
async function intoFolder(message: Buffer, folder: string, mailId: string): Promise<Delivery> {
  await mkdir(folder, { recursive: true, mode: 0o700 });
  const place = path.join(folder, `${mailId}.eml`);
  const file = await open(`${place}.making`, 'w', 0o600);
  try {
    await file.writeFile(message);
    await file.sync();
  } finally {
    await file.close();
  }
  await rename(`${place}.making`, place);
  return { kind: 'sent', answer: `in-outbox: ${mailId}.eml` };
}
