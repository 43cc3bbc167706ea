import type { overview as english } from '../../en/office/overview.js';

export const overview: Record<keyof typeof english, string> = {};
