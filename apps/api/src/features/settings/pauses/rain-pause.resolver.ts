import { Args, ID, Mutation, Parent, ResolveField, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { DateTimeScalar } from '../../../platform/graphql/scalars.js';
import { Allow } from '../../../platform/identity/allow.js';
import { Permission } from '../../../platform/identity/permission.js';
import { Tx } from '../../../platform/identity/tx.js';
import { Controller } from '../../portfolio/controllers/controller.type.js';
import { EndRainPause } from './end-rain-pause.service.js';
import { PauseController } from './pause-controller.service.js';
import { pausesOfController } from './pauses-of-controller.loader.js';
import { RainPause, showRainPause } from './rain-pause.type.js';

/** Rain pauses of controllers. */
@Resolver(() => Controller)
export class RainPauseResolver {
  constructor(
    private readonly pause: PauseController,
    private readonly end: EndRainPause,
  ) {}

  @Allow(Permission.RecordFieldwork)
  @Mutation(() => RainPause)
  async pauseController(
    @Tx() tx: OrganizationTransaction,
    @Args('controllerId', { type: () => ID }) controllerId: string,
    @Args('from', { type: () => DateTimeScalar }) from: Date,
    @Args('until', { type: () => DateTimeScalar, nullable: true }) until: Date | null,
  ): Promise<RainPause> {
    return showRainPause(await this.pause.run(tx, controllerId, from, until ?? null));
  }

  @Allow(Permission.RecordFieldwork)
  @Mutation(() => RainPause)
  async endRainPause(
    @Tx() tx: OrganizationTransaction,
    @Args('id', { type: () => ID }) id: string,
    @Args('until', { type: () => DateTimeScalar }) until: Date,
  ): Promise<RainPause> {
    return showRainPause(await this.end.run(tx, id, until));
  }

  /** The newest first. */
  @ResolveField(() => [RainPause])
  async rainPauses(@Tx() tx: OrganizationTransaction, @Parent() controller: Controller): Promise<RainPause[]> {
    return (await pausesOfController.of(tx).load(controller.id)).map(showRainPause);
  }
}
