import { type Cell, Fault } from './column.js';

const LONGEST_NAME = 200;
const LONGEST_TEXT = 5000;
/** Characters that cannot be seen and make two equal-looking names differ, or turn the text around. Joiners of scripts and emoji are left. */
const INVISIBLE = /[\p{Cc}\u00ad\u061c\u180e\u200b\u200e\u200f\u2028-\u202e\u2060-\u2069\ufeff\ufff9-\ufffb]/u;
const CONTROL = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f]/u;

/** Names are compared after Unicode composition and without the spaces around them. */
export function nameKey(name: string): string {
  return name.normalize('NFC').trim();
}

/** A name: the key by which rows of several files find each other. */
export function name(...reserved: readonly string[]): Cell<string> {
  return {
    read(text) {
      const hidden = INVISIBLE.exec(text)?.[0];
      if (hidden !== undefined) return new Fault('INVISIBLE_CHARACTER', '', codePoint(hidden));
      if (text.length > LONGEST_NAME) return new Fault('TEXT_TOO_LONG', String(LONGEST_NAME), String(text.length));
      const key = nameKey(text);
      return reserved.includes(key.toLowerCase()) ? new Fault('RESERVED_NAME') : key;
    },
    write: (value) => value,
  };
}

/** The name of a meter, or `none` in any case: no meter. */
export const nameOrNone: Cell<string> = {
  read(written) {
    const value = name().read(written);
    return typeof value === 'string' && value.toLowerCase() === 'none' ? 'none' : value;
  },
  write: (value) => value,
};

/** Free text: notes, addresses, places. Line breaks are kept. */
export const text: Cell<string> = {
  read(written) {
    const control = CONTROL.exec(written)?.[0];
    if (control !== undefined) return new Fault('INVISIBLE_CHARACTER', '', codePoint(control));
    return written.length > LONGEST_TEXT ? new Fault('TEXT_TOO_LONG', String(LONGEST_TEXT), String(written.length)) : written;
  },
  write: (value) => value,
};

function codePoint(character: string): string {
  return `U+${(character.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')}`;
}

const EMAIL = /^[^\s@<>,;:"()[\]\\]{1,64}@[^\s@<>,;:"()[\]\\]+\.[^\s@<>,;:"()[\]\\.]{2,}$/;
const LONGEST_EMAIL = 254;

/** E-mail addresses separated by spaces. */
export const emails: Cell<readonly string[]> = {
  read(written) {
    const addresses = written.split(/\s+/);
    const wrong = addresses.find((address) => !EMAIL.test(address) || address.length > LONGEST_EMAIL || INVISIBLE.test(address));
    return wrong === undefined ? addresses : new Fault('NOT_AN_EMAIL', '', wrong);
  },
  write: (addresses) => addresses.join(' '),
};
