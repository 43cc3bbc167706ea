import type { ReactNode } from 'react';
import { Route, Routes } from 'react-router';
import { NotFoundPage } from '../../../page/NotFoundPage.js';
import { mayDo, useViewer } from '../../../session/viewer.js';
import { BrandPage } from '../brand/BrandPage.js';
import { ExchangePage } from '../exchange/ExchangePage.js';
import { OrganizationPage } from '../organization/OrganizationPage.js';
import { PeoplePage } from '../people/PeoplePage.js';
import '../setup.css';
import { ClientsPage } from '../things/pages/ClientsPage.js';
import { CrewsPage } from '../things/pages/CrewsPage.js';
import { PropertiesPage } from '../things/pages/PropertiesPage.js';
import { PropertyThingsPage } from '../things/pages/PropertyThingsPage.js';
import { StationsPage } from '../things/pages/StationsPage.js';
import { SuppliersPage } from '../things/pages/SuppliersPage.js';
import { StationPage } from '../weather/StationPage.js';
import { SetupNav } from './SetupNav.js';

/** What the company keeps: brought in from files, or typed. */
export function SetupPage() {
  const viewer = useViewer();
  const only = (permission: string, page: ReactNode): ReactNode => (mayDo(viewer, permission) ? page : <NotFoundPage />);
  return (
    <>
      <SetupNav />
      <Routes>
        <Route index element={only('import and export', <ExchangePage />)} />
        <Route path="import" element={only('import and export', <ExchangePage />)} />
        <Route path="clients" element={<ClientsPage />} />
        <Route path="properties" element={<PropertiesPage />} />
        <Route path="properties/:id" element={<PropertyThingsPage />} />
        <Route path="suppliers" element={<SuppliersPage />} />
        <Route path="stations" element={<StationsPage />} />
        <Route path="stations/:id" element={<StationPage />} />
        <Route path="crews" element={<CrewsPage />} />
        <Route path="reports" element={only('write reports', <BrandPage />)} />
        <Route path="people" element={only('manage members', <PeoplePage />)} />
        <Route path="organization" element={only('manage organization', <OrganizationPage />)} />
        <Route path="*" element={<NotFoundPage />} />
      </Routes>
    </>
  );
}
