// Timers of different abilities, without a maker: what each can hold is all that matters.

export const MODELS = {
  plain: {
    programs: 3,
    starts: 4,
    maxMinutes: 240,
    minuteStep: 1,
    adjustScope: 'controller',
    adjustStep: 10,
    adjustMost: 200,
    rainSensor: false,
  },
  usual: {
    programs: 4,
    starts: 4,
    maxMinutes: 360,
    minuteStep: null,
    adjustScope: 'controller',
    adjustStep: 5,
    adjustMost: 200,
    rainSensor: true,
  },
  able: {
    programs: 4,
    starts: 8,
    maxMinutes: 600,
    minuteStep: null,
    adjustScope: 'program',
    adjustStep: 1,
    adjustMost: 300,
    rainSensor: true,
    masterValve: true,
  },
  large: {
    programs: 10,
    starts: 8,
    maxMinutes: 720,
    minuteStep: null,
    adjustScope: 'program',
    adjustStep: 1,
    adjustMost: 300,
    rainSensor: true,
    masterValve: true,
    flowSensor: true,
  },
};

const SIZES = [4, 6, 8, 12, 16, 24, 36, 48];
export const stationsFor = (zones) => SIZES.find((size) => size >= zones);
