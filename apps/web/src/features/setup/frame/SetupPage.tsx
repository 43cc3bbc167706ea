import { Route, Routes } from 'react-router';
import { NotFoundPage } from '../../../app/NotFoundPage.js';
import { ExchangePage } from '../exchange/ExchangePage.js';
import '../setup.css';
import { SetupNav } from './SetupNav.js';

/** What the company keeps: brought in from files, or typed. */
export function SetupPage() {
  return (
    <>
      <SetupNav />
      <Routes>
        <Route index element={<ExchangePage />} />
        <Route path="import" element={<ExchangePage />} />
        <Route path="*" element={<NotFoundPage />} />
      </Routes>
    </>
  );
}
