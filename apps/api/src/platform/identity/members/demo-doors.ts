import type { DataSource } from 'typeorm';
import type { Request } from 'express';
import type { Role } from '../../database/actor.js';

/** The password of everybody in the demonstration: no secret, and shown on this machine only. */
export const DEMO_PASSWORD = 'quail-and-clover';

/** One door of the demonstration. */
export interface Door {
  readonly email: string;
  readonly name: string;
  readonly role: Role;
  readonly organizationName: string;
}

const LOOPBACK = /^(::1|::ffff:127\.\d+\.\d+\.\d+|127\.\d+\.\d+\.\d+)$/;
const HERE = /^(localhost|127\.0\.0\.1|\[::1\])(:\d+)?$/i;

/** Whether the request comes from a browser on this machine, past no proxy and by no name that points here from elsewhere. */
export function isFromHere(request: Pick<Request, 'headers' | 'socket'>): boolean {
  const { headers, socket } = request;
  return LOOPBACK.test(socket.remoteAddress ?? '') && HERE.test(headers.host ?? '') && !headers['x-forwarded-for'] && !headers['forwarded'];
}

/** The members of the demonstration's organizations, the most able first. */
export const demoDoors = (source: DataSource): Promise<Door[]> =>
  source.query('select email, name, role, organization_name as "organizationName" from demo_doors()') as Promise<Door[]>;
