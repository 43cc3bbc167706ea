import type { findings as english } from '../../en/office/findings.js';

export const findings: Record<keyof typeof english, string> = {};
