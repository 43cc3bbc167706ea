import { Module } from '@nestjs/common';
import { ControllerSettingsResolver } from './facts/controller-settings.field-resolver.js';
import { RecordSettings } from './facts/record-settings.service.js';
import { SettingsResolver } from './facts/settings.resolver.js';
import { OneControllerResolver } from './one-controller.resolver.js';
import { EndRainPause } from './pauses/end-rain-pause.service.js';
import { PauseController } from './pauses/pause-controller.service.js';
import { RainPauseResolver } from './pauses/rain-pause.resolver.js';

/** What the controllers are set to, and when they are paused. */
@Module({
  providers: [
    RecordSettings,
    SettingsResolver,
    ControllerSettingsResolver,
    OneControllerResolver,
    PauseController,
    EndRainPause,
    RainPauseResolver,
  ],
  exports: [RecordSettings, PauseController],
})
export class SettingsModule {}
