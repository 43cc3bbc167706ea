import { Injectable } from '@nestjs/common';
import type { GivenProperty, ReportInput } from '@rillbook/showing/report/report-input.js';
import type { ReportModel } from '@rillbook/showing/report/report-model.js';
import { writeReport } from '@rillbook/showing/report/write-report.js';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { organizations } from '../../../platform/identity/organizations/organization.repository.js';
import { todayOf } from '../../../platform/jobs/clock.js';
import { platformProblems } from '../../../platform/problems/platform.problems.js';
import { accountsOfProperty, leastConfidence } from '../../accounts/months/month-account.loader.js';
import { ordersOfProperty } from '../../fieldwork/orders/lists/orders-of-property.loader.js';
import { photosOfProperty } from '../../fieldwork/visits/photos/photos-of-property.loader.js';
import { findingsOfProperty } from '../../findings/finding.loader.js';
import { clientOfId } from '../../portfolio/clients/client.loader.js';
import { controllersOfProperty } from '../../portfolio/controllers/controllers-of-property.loader.js';
import { propertiesOfClient } from '../../portfolio/properties/properties-of-client.loader.js';
import { zonesOfProperty } from '../../portfolio/zones/zones-of-property.loader.js';
import { dataUrlOf } from '../brand/logo.js';
import { reportBrands } from '../brand/report-brand.repository.js';
import { reportsProblems } from '../reports.problems.js';
import { dataVersion } from './data-version.js';
import { givenMonth } from './given-month.js';
import { GivenPhotos } from './given-photos.service.js';
import { givenAllowance, givenFinding, givenZone } from './given-property.js';
import { firstWork, givenWork } from './given-work.js';
import { endOf, priceIn } from './of-period.js';

type Property = Awaited<ReturnType<ReturnType<typeof propertiesOfClient.of>['load']>>[number];

/** Which report. */
export interface AskedReport {
  readonly clientId: string;
  readonly propertyId: string | null;
  readonly fromOn: string;
  readonly untilOn: string;
  readonly note: string | null;
}

interface Reader {
  readonly language: 'en' | 'es';
  readonly fromMonth: string;
  readonly untilMonth: string;
}

interface Gathered {
  readonly given: GivenProperty;
  readonly versions: readonly string[];
}

/** Writes a report from what is on record now. */
@Injectable()
export class GatherReport {
  constructor(private readonly photos: GivenPhotos) {}

  async run(tx: OrganizationTransaction, asked: AskedReport): Promise<ReportModel> {
    return writeReport(await this.input(tx, asked));
  }

  private async input(tx: OrganizationTransaction, asked: AskedReport): Promise<ReportInput> {
    const organization = await organizations.own(tx);
    const client = await clientOfId.of(tx).load(asked.clientId);
    if (!client) throw platformProblems.notFound({ thing: 'client', id: asked.clientId });
    const all = await propertiesOfClient.of(tx).load(asked.clientId);
    const chosen = all.filter(({ id }) => asked.propertyId === null || id === asked.propertyId);
    if (chosen.length === 0) throw reportsProblems.nothingToTell({ client: client.name });
    const language = client.language ?? organization.language;
    const period = { from: asked.fromOn.slice(0, 7), until: asked.untilOn.slice(0, 7) };
    const gathered = await Promise.all(
      chosen.map((property) => this.property(tx, property, { language, fromMonth: period.from, untilMonth: period.until })),
    );
    const properties = gathered.map(({ given }) => given);
    const said = {
      brand: await brandOf(tx, organization.name),
      client: client.name,
      period,
      language,
      units: client.units ?? organization.units,
      currency: organization.currency,
      timeZone: chosen[0]!.timeZone,
      confidence: await leastConfidence(tx),
      note: asked.note,
    };
    const findingsAndWork = properties.map(({ allowance, findings, work, zones }) => [
      allowance,
      findings,
      work.map(({ photos, ...order }) => [order, photos.length]),
      zones,
    ]);
    const version = dataVersion([said, gathered.map(({ versions }) => versions), findingsAndWork]);
    return { ...said, madeOn: todayOf(organization), dataVersion: version, properties };
  }

  private async property(tx: OrganizationTransaction, property: Property, { language, fromMonth, untilMonth }: Reader): Promise<Gathered> {
    const { id, timeZone } = property;
    const [accounts, findings, orders, photos, zones, controllers] = await Promise.all([
      accountsOfProperty.of(tx).load(id),
      findingsOfProperty.of(tx).load(id),
      ordersOfProperty.of(tx).load(id),
      photosOfProperty.of(tx).load(id),
      zonesOfProperty.of(tx).load(id),
      controllersOfProperty.of(tx).load(id),
    ]);
    const rows = accounts.filter(({ meterId, month }) => meterId === null && month.slice(0, 7) <= untilMonth);
    const pictures = await this.photos.ofOrders(photos, language, timeZone);
    const told = findings.map((finding) => givenFinding(finding, { zones, controllers }, { endedAt: endOf(untilMonth, timeZone), orders }));
    const work = orders.map((order) => givenWork(order, timeZone, { photos: pictures.get(order.id) ?? [], findings: told }));
    const given: GivenProperty = {
      id,
      name: property.name,
      where: [property.address, property.city].filter(Boolean).join(', '),
      months: rows.map(givenMonth),
      firstWork: firstWork(work),
      pricePerLitre: priceIn(rows.filter(({ month }) => month.slice(0, 7) >= fromMonth)),
      findings: told,
      work,
      allowance: givenAllowance(property),
      zones: zones.map(givenZone),
    };
    return { given, versions: rows.map(({ inputsVersion, month }) => `${month} ${inputsVersion}`) };
  }
}

/** The office's own dress; what is not set is the organization's name and the report's own colour. */
async function brandOf(tx: OrganizationTransaction, organizationName: string): Promise<ReportInput['brand']> {
  const brand = await reportBrands.own(tx);
  if (!brand) return { name: organizationName, colour: null, logo: null, contact: null };
  return { name: brand.name ?? organizationName, colour: brand.colour, logo: dataUrlOf(brand.logo), contact: brand.contact };
}
