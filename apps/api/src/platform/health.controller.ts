import { Controller, Get, Inject } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { Public } from './identity/allow.js';

/** Whether the product can work: asked by containers and by the person who starts it. */
@Controller('health')
export class HealthController {
  constructor(@Inject(DataSource) private readonly source: DataSource) {}

  @Public('a container asks before anybody can sign in; it tells nothing of anybody')
  @Get()
  async health(): Promise<{ database: 'answers' }> {
    await this.source.query('select 1');
    return { database: 'answers' };
  }
}
