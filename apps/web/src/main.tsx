import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './app/App.js';
import { firstLanguage } from './app/first-language.js';
import { fetchAhead } from './app/pages.js';
import { fetchCatalogue } from './i18n/catalogue.js';
import { keepPages } from './session/new-version.js';
import './ui/theme/fonts.css';
import './ui/theme/tokens.css';
import './ui/theme/base.css';

// What does not come is fetched again where it is drawn, and said there.
const ahead = fetchAhead(window.location.pathname).catch(() => undefined);
const root = document.getElementById('root');
if (!root) throw new Error('index.html has no element #root.');
if (import.meta.env.PROD)
  keepPages().catch((problem: unknown) => console.warn('The pages are not kept on this device, and do not open without signal:', problem));
await Promise.all([fetchCatalogue(firstLanguage()), ahead]);
createRoot(root).render(
  <StrictMode>
    <App />
  </StrictMode>,
);
