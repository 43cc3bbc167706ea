import { type CustomDecorator, SetMetadata } from '@nestjs/common';
import type { Permission } from './permission.js';

export const ALLOW = 'rillbook:allow';
export const PUBLIC = 'rillbook:public';

/** The operation needs this permission of the signed-in member. */
export const Allow = (permission: Permission): CustomDecorator => SetMetadata(ALLOW, permission);

/** The operation is open to strangers, for this reason. */
export const Public = (why: string): CustomDecorator => SetMetadata(PUBLIC, why);
