import { CrewMemberRow } from './features/fieldwork/crews/crew-member.entity.js';
import { CrewRow } from './features/fieldwork/crews/crew.entity.js';
import { WorkOrderRow } from './features/fieldwork/orders/work-order.entity.js';
import { WaterReportRow } from './features/reports/kept/water-report.entity.js';
import { ReportMailRow } from './features/reports/sending/mails/report-mail.entity.js';
import { MailStopRow } from './features/reports/sending/mails/mail-stop.entity.js';
import { ShareLinkRow } from './features/reports/sharing/share-link.entity.js';
import { ShareVisitRow } from './features/reports/sharing/share-visit.entity.js';
import { ReportBrandRow } from './features/reports/brand/report-brand.entity.js';
import { ClientQuestionRow } from './features/reports/asking/client-question.entity.js';
import { ReportEditionRow } from './features/reports/kept/report-edition.entity.js';
import { RouteRow } from './features/fieldwork/routes/route.entity.js';
import { MonthPlanRow } from './features/fieldwork/month-planning/runs/month-plan.entity.js';
import { VisitTermsRow } from './features/fieldwork/month-planning/visit-terms/visit-terms.entity.js';
import { StopRow } from './features/fieldwork/routes/stop.entity.js';
import { PhotoRow } from './features/fieldwork/visits/photos/photo.entity.js';
import { DeviceRow } from './features/phones/devices/device.entity.js';
import { OperationRow } from './features/phones/operations/operation.entity.js';
import { ArrivalRow } from './features/fieldwork/visits/deeds/arrival.entity.js';
import { VisitRow } from './features/fieldwork/visits/visit.entity.js';
import { ZoneNoteRow } from './features/fieldwork/visits/zone-notes/zone-note.entity.js';
import { ZoneTestRow } from './features/fieldwork/visits/zone-tests/zone-test.entity.js';
import { FindingRow } from './features/findings/finding.entity.js';
import { PlanSettingRow } from './features/plans/weights/plan-setting.entity.js';
import { MonthAccountRow } from './features/accounts/months/month-account.entity.js';
import { ClientRow } from './features/portfolio/clients/client.entity.js';
import { PropertyRow } from './features/portfolio/properties/property.entity.js';
import { BillRow } from './features/metering/bills/bill.entity.js';
import { ReadingRow } from './features/metering/readings/reading.entity.js';
import { SettingsRow } from './features/settings/facts/settings.entity.js';
import { RainPauseRow } from './features/settings/pauses/rain-pause.entity.js';
import { UsageDayRow } from './features/metering/usage/usage-day.entity.js';
import { BackflowAssemblyRow } from './features/portfolio/backflow/backflow-assembly.entity.js';
import { ControllerRow } from './features/portfolio/controllers/controller.entity.js';
import { MeterRow } from './features/portfolio/meters/meter.entity.js';
import { PlantingRow } from './features/portfolio/plantings/planting.entity.js';
import { RateTierRow } from './features/portfolio/suppliers/rates/rate-tier.entity.js';
import { WateringRuleRow } from './features/portfolio/suppliers/rules/watering-rule.entity.js';
import { WaterSupplierRow } from './features/portfolio/suppliers/water-supplier.entity.js';
import { ZoneRow } from './features/portfolio/zones/zone.entity.js';
import { WeatherDayRow } from './features/weather/days/weather-day.entity.js';
import { WeatherStationRow } from './features/weather/stations/weather-station.entity.js';
import { InvitationRow } from './platform/identity/invitations/invitation.entity.js';
import { MemberRow } from './platform/identity/members/member.entity.js';
import { PersonRow } from './platform/identity/members/person.entity.js';
import { OrganizationItself } from './platform/identity/organizations/organization.entity.js';
import { BackgroundJobRow } from './platform/jobs/background-job.entity.js';
import { ChangeRow } from './platform/records/change.entity.js';

/** Every row class of the product. A test holds them against the database. */
export const entities = [
  BackgroundJobRow,
  ChangeRow,
  ClientRow,
  PropertyRow,
  BackflowAssemblyRow,
  ControllerRow,
  MeterRow,
  PlantingRow,
  RateTierRow,
  WateringRuleRow,
  WaterSupplierRow,
  ZoneRow,
  WeatherDayRow,
  WeatherStationRow,
  BillRow,
  ReadingRow,
  UsageDayRow,
  RainPauseRow,
  SettingsRow,
  InvitationRow,
  MemberRow,
  OrganizationItself,
  PersonRow,
  CrewMemberRow,
  CrewRow,
  WorkOrderRow,
  WaterReportRow,
  ReportEditionRow,
  ClientQuestionRow,
  ReportBrandRow,
  ShareVisitRow,
  ShareLinkRow,
  MailStopRow,
  ReportMailRow,
  RouteRow,
  MonthPlanRow,
  VisitTermsRow,
  StopRow,
  VisitRow,
  ArrivalRow,
  PhotoRow,
  DeviceRow,
  OperationRow,
  ZoneNoteRow,
  ZoneTestRow,
  FindingRow,
  MonthAccountRow,
  PlanSettingRow,
];
