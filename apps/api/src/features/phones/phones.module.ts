import { Module } from '@nestjs/common';
import { FieldworkModule } from '../fieldwork/fieldwork.module.js';
import { MeteringModule } from '../metering/metering.module.js';
import { SettingsModule } from '../settings/settings.module.js';
import { TakeIn } from './deciding/take-in.service.js';
import { ChooseWord } from './deciding/choose-word.service.js';
import { ChooseWordResolver } from './deciding/choose-word.resolver.js';
import { OpenOperationFieldResolver } from './deciding/open-operation.field-resolver.js';
import { DoOperation } from './deeds/do-operation.service.js';
import { DoOrder } from './deeds/do-order.service.js';
import { DoRecord } from './deeds/do-record.service.js';
import { DoTest } from './deeds/do-test.service.js';
import { DoVisit } from './deeds/do-visit.service.js';
import { DeviceResolver } from './devices/device.resolver.js';
import { HearDevice } from './devices/hear-device.service.js';
import { FieldworkLiveController } from './live/fieldwork-live.controller.js';
import { TellFieldwork } from './live/tell-fieldwork.js';
import { OperationResolver } from './operations/operation.resolver.js';
import { SendFieldwork } from './operations/send-fieldwork.service.js';
import { TakeOperation } from './operations/take-operation.service.js';

const operations = [OperationResolver, SendFieldwork, TakeOperation, DoOperation, DoVisit, DoRecord, DoOrder, DoTest];
const deciding = [OpenOperationFieldResolver, ChooseWordResolver, ChooseWord, TakeIn];
const devices = [DeviceResolver, HearDevice];

/** What crews' phones send when they have signal again, each thing once, and what is still on them. */
@Module({
  imports: [MeteringModule, SettingsModule, FieldworkModule],
  providers: [...operations, ...deciding, ...devices, TellFieldwork],
  controllers: [FieldworkLiveController],
})
export class PhonesModule {}
