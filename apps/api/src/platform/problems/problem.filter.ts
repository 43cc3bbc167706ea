import { type ArgumentsHost, Catch, type ExceptionFilter, HttpException } from '@nestjs/common';
import type { Response } from 'express';
import { asProblem } from './answer.js';

/** HTTP answers of faults: code, sentence, details. GraphQL formats its own (see graphql.module). */
@Catch()
export class ProblemFilter implements ExceptionFilter {
  catch(thrown: unknown, host: ArgumentsHost): void {
    if (host.getType<string>() === 'graphql') throw thrown;
    const response = host.switchToHttp().getResponse<Response>();
    if (thrown instanceof HttpException) {
      response.status(thrown.getStatus()).json({ code: 'HTTP_ERROR', message: thrown.message, details: {} });
      return;
    }
    const problem = asProblem(thrown);
    response.status(problem.status).json({ code: problem.code, message: problem.message, details: problem.details });
  }
}
