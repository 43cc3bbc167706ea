import { Module } from '@nestjs/common';
import { FindingsModule } from '../findings/findings.module.js';
import { PlansModule } from '../plans/plans.module.js';
import { PortfolioModule } from '../portfolio/portfolio.module.js';
import { SettingsModule } from '../settings/settings.module.js';
import { StopCautionsResolver } from './visits/cautions/caution.field-resolver.js';
import { CrewResolver } from './crews/crew.resolver.js';
import { LeaveStop } from './day-planning/leave-stop.service.js';
import { MoveStopResolver } from './day-planning/move-stop.resolver.js';
import { MoveStop } from './day-planning/move-stop.service.js';
import { PlaceStop } from './day-planning/place-stop.service.js';
import { ApplyPlan } from './month-planning/deeds/apply-plan.service.js';
import { CarryStop } from './month-planning/deeds/carry-stop.service.js';
import { PlaceItem } from './month-planning/deeds/place-item.service.js';
import { PlanMonth } from './month-planning/deeds/plan-month.service.js';
import { ReplanDay } from './month-planning/deeds/replan-day.service.js';
import { SendItem } from './month-planning/deeds/send-item.service.js';
import { UndoPlan } from './month-planning/deeds/undo-plan.service.js';
import { GatherMaterial } from './month-planning/material/gather-material.service.js';
import { PlanByHandResolver } from './month-planning/by-hand.resolver.js';
import { MonthPlanResolver } from './month-planning/month-plan.resolver.js';
import { OrderSeason } from './month-planning/season/order-season.service.js';
import { OrderSeasonResolver } from './month-planning/season/order-season.resolver.js';
import { ShowMonth } from './month-planning/shown/show-month.service.js';
import { ShowTimes } from './month-planning/shown/show-times.service.js';
import { TravelTimes } from './month-planning/travel/travel-times.service.js';
import { SetVisitTerms } from './month-planning/visit-terms/set-visit-terms.service.js';
import { VisitTermsResolver } from './month-planning/visit-terms/visit-terms.resolver.js';
import { AcceptFinding } from './order-deeds/from-finding/accept-finding.service.js';
import { ApproveAsClient } from './order-deeds/approval/approve-as-client.service.js';
import { ApproveWorkOrder } from './order-deeds/approval/approve-work-order.service.js';
import { AssignWorkOrder } from './order-deeds/assign-work-order.service.js';
import { ChangeWorkOrder } from './order-deeds/change-work-order.service.js';
import { CloseWorkOrder } from './order-deeds/close-work-order.service.js';
import { CreateWorkOrder } from './order-deeds/create-work-order.service.js';
import { DropWorkOrder } from './order-deeds/drop-work-order.service.js';
import { FindingWorkResolver } from './order-deeds/from-finding/finding-work.resolver.js';
import { MakeOrder } from './order-deeds/make-order.service.js';
import { WorkOrderDeedsResolver } from './order-deeds/work-order-deeds.resolver.js';
import {
  FindingWorkOrdersResolver,
  PropertyWorkOrdersResolver,
  StopWorkOrdersResolver,
} from './orders/lists/order-lists.field-resolver.js';
import { WorkOrderFieldResolver } from './orders/work-order.field-resolver.js';
import { WorkOrderResolver } from './orders/work-order.resolver.js';
import { OrderPlan } from './order-deeds/in-one-go/order-plan.service.js';
import { OrderRuleChange } from './order-deeds/in-one-go/order-rule-change.service.js';
import { OrderPausesResolver } from './order-deeds/in-one-go/order-pauses.resolver.js';
import { OrderPauses } from './order-deeds/in-one-go/order-pauses.service.js';
import { PauseAsOrdered } from './planned-settings/pause-as-ordered.service.js';
import { PlanSettings } from './planned-settings/plan-settings.service.js';
import { RuleChangeDeedsResolver } from './order-deeds/in-one-go/rule-change-deeds.resolver.js';
import { RouteResolver } from './routes/route.resolver.js';
import { StopResolver } from './routes/stop.resolver.js';
import { Arrive } from './visits/deeds/arrive.service.js';
import { CloseVisit } from './visits/deeds/close-visit.service.js';
import { EndVisit } from './visits/deeds/end-visit.service.js';
import { NoteZone } from './visits/deeds/note-zone.service.js';
import { VisitDeedsResolver } from './visits/deeds/visit-deeds.resolver.js';
import { WithdrawVisit } from './visits/deeds/withdraw-visit.service.js';
import { AnnouncePhoto } from './visits/photos/announce-photo.service.js';
import { KeepPicture } from './visits/photos/keep-picture.service.js';
import { PhotoController } from './visits/photos/photo.controller.js';
import { FindingPhotosResolver, PropertyPhotosResolver, VisitPhotosResolver } from './visits/photos/photo.field-resolver.js';
import { PhotoResolver } from './visits/photos/photo.resolver.js';
import { PropertyVisitsResolver, StopVisitResolver, VisitFieldResolver } from './visits/visit.field-resolver.js';
import { RecordZoneTest } from './visits/zone-tests/record-zone-test.service.js';
import { VisitTestsResolver, ZoneTestFieldResolver } from './visits/zone-tests/zone-test.field-resolver.js';

const routes = [RouteResolver, StopResolver, StopCautionsResolver, MoveStopResolver, PlaceStop, LeaveStop, MoveStop];
const monthPlanning = [
  MonthPlanResolver,
  PlanByHandResolver,
  VisitTermsResolver,
  SetVisitTerms,
  GatherMaterial,
  TravelTimes,
  ShowMonth,
  ShowTimes,
  SendItem,
  ApplyPlan,
  PlanMonth,
  ReplanDay,
  OrderSeason,
  OrderSeasonResolver,
  UndoPlan,
  CarryStop,
  PlaceItem,
];
const orders = [WorkOrderResolver, WorkOrderFieldResolver, StopWorkOrdersResolver, FindingWorkOrdersResolver, PropertyWorkOrdersResolver];
const orderDeeds = [
  WorkOrderDeedsResolver,
  FindingWorkResolver,
  MakeOrder,
  PlanSettings,
  CreateWorkOrder,
  ChangeWorkOrder,
  AssignWorkOrder,
  ApproveWorkOrder,
  ApproveAsClient,
  DropWorkOrder,
  CloseWorkOrder,
  AcceptFinding,
  RuleChangeDeedsResolver,
  OrderRuleChange,
  OrderPlan,
  OrderPauses,
  OrderPausesResolver,
  PauseAsOrdered,
];
const photos = [PhotoResolver, VisitPhotosResolver, FindingPhotosResolver, PropertyPhotosResolver, AnnouncePhoto, KeepPicture];
const visits = [
  VisitFieldResolver,
  StopVisitResolver,
  PropertyVisitsResolver,
  VisitDeedsResolver,
  Arrive,
  NoteZone,
  CloseVisit,
  EndVisit,
  WithdrawVisit,
];
const zoneTests = [VisitTestsResolver, ZoneTestFieldResolver, RecordZoneTest];

/** Crews and their days, the work given out, the visits that were made. */
@Module({
  imports: [FindingsModule, SettingsModule, PortfolioModule, PlansModule],
  controllers: [PhotoController],
  providers: [CrewResolver, ...routes, ...monthPlanning, ...orders, ...orderDeeds, ...visits, ...zoneTests, ...photos],
  exports: [Arrive, EndVisit, WithdrawVisit, NoteZone, RecordZoneTest, AnnouncePhoto, CloseWorkOrder, AcceptFinding, ApproveAsClient],
})
export class FieldworkModule {}
