import { pino } from 'pino';

/** The process's log: one JSON line an event, UTC, without passwords, cookies or tokens. */
export const log = pino({
  level: process.env['LOG_LEVEL'] ?? 'warn',
  base: undefined,
  timestamp: pino.stdTimeFunctions.isoTime,
  redact: {
    paths: [
      '*.password',
      '*.cookie',
      '*.token',
      'password',
      'cookie',
      'token',
      'req.headers.cookie',
      'err.parameters',
      'err.driverError.detail',
    ],
    censor: '…',
  },
});
