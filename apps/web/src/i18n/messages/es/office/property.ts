import type { property as english } from '../../en/office/property.js';

export const property: Record<keyof typeof english, string> = {};
