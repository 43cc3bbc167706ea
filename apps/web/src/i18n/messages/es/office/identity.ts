import type { identity as english } from '../../en/office/identity.js';

export const identity: Record<keyof typeof english, string> = {};
