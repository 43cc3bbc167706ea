import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './app/App.js';
import './ui/theme/fonts.css';
import './ui/theme/tokens.css';
import './ui/theme/base.css';

const root = document.getElementById('root');
if (!root) throw new Error('index.html has no element #root.');
createRoot(root).render(
  <StrictMode>
    <App />
  </StrictMode>,
);
