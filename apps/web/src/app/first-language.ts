import type { Language } from '../i18n/numbers.js';
import { rememberedLanguage } from '../session/remembered-viewer.js';

/** Until it is known who asks: the language of whoever was here last, else the device's own. */
export const firstLanguage = (): Language => rememberedLanguage() ?? (navigator.language.toLowerCase().startsWith('es') ? 'es' : 'en');
