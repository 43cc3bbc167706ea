import { Module } from '@nestjs/common';
import { MeterBillsResolver } from './bills/meter-bills.field-resolver.js';
import { MeterReadingsResolver } from './readings/meter-readings.field-resolver.js';
import { ReadingResolver } from './readings/reading.resolver.js';
import { RecordReading } from './readings/record-reading.service.js';
import { MeterUsageResolver } from './usage/meter-usage.field-resolver.js';

/** What the meters say: readings, feeds, bills. */
@Module({
  providers: [RecordReading, ReadingResolver, MeterReadingsResolver, MeterUsageResolver, MeterBillsResolver],
  exports: [RecordReading],
})
export class MeteringModule {}
