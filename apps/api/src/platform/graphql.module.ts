import type { ApolloServerPlugin, GraphQLRequestContext } from '@apollo/server';
import { unwrapResolverError } from '@apollo/server/errors';
import { ApolloDriver, type ApolloDriverConfig } from '@nestjs/apollo';
import { GraphQLModule } from '@nestjs/graphql';
import { GraphQLError, type GraphQLFormattedError } from 'graphql';
import type { Request } from 'express';
import type { RequestScope, ScopedRequest } from './identity/request-scope.js';
import { asProblem } from './problems/answer.js';
import { finiteNumbersRule } from './graphql/finite-numbers.js';
import { limitsRule } from './graphql/limits.js';

interface Context {
  scope: RequestScope;
}

const OWN_CODES = new Set([
  'GRAPHQL_PARSE_FAILED',
  'GRAPHQL_VALIDATION_FAILED',
  'BAD_USER_INPUT',
  'BAD_REQUEST',
  'QUERY_TOO_LARGE',
  'VALUE_REFUSED',
  'OPERATION_RESOLUTION_FAILURE',
  'PERSISTED_QUERY_NOT_FOUND',
]);

/** What GraphQL itself found wrong with the request. */
const ofTheRequest = (error: GraphQLFormattedError, code: string): GraphQLFormattedError => ({
  message: error.message,
  // A rule of ours that refuses a document has its code here: that of the error itself becomes GraphQL's own.
  extensions: { code: String(error.extensions?.['problem'] ?? code), details: error.extensions?.['details'] ?? {} },
  ...(error.locations && { locations: error.locations }),
});

/** What a resolver threw, without what GraphQL wrapped around it. */
const innermost = (thrown: unknown): unknown => (thrown instanceof GraphQLError && thrown.originalError ? thrown.originalError : thrown);

/** Faults leave as a code, a sentence and details; nothing of the machine leaves with them. */
function formatted(error: GraphQLFormattedError, thrown: unknown): GraphQLFormattedError {
  const code = String(error.extensions?.['code'] ?? '');
  const original = unwrapResolverError(thrown);
  if (original === thrown && OWN_CODES.has(code)) return ofTheRequest(error, code);
  const { message, code: own, details } = asProblem(innermost(original));
  return { message, extensions: { code: own, details }, ...(error.path && { path: error.path }) };
}

/** One request, one transaction, one fate: it ends before the answer leaves. */
const oneFate: ApolloServerPlugin<Context> = {
  requestDidStart: async () => ({
    async willSendResponse(context: GraphQLRequestContext<Context>) {
      const body = context.response.body;
      const result = body?.kind === 'single' ? body.singleResult : null;
      const failed = !result || Boolean(result.errors?.length);
      try {
        await context.contextValue.scope.end(!failed);
      } catch (problem) {
        if (!result) throw problem;
        result.data = null;
        result.errors = [formatted({ message: '' }, problem)];
      }
    },
  }),
};

/** GraphQL at /graphql: schema from the resolvers, limits, coded faults, the request's transaction. */
export const graphql = () =>
  GraphQLModule.forRoot<ApolloDriverConfig>({
    driver: ApolloDriver,
    autoSchemaFile: true,
    sortSchema: true,
    playground: false,
    introspection: process.env['NODE_ENV'] === 'development',
    includeStacktraceInErrorResponses: false,
    hideSchemaDetailsFromClientErrors: true,
    csrfPrevention: true,
    parseOptions: { maxTokens: 4000 },
    validationRules: [limitsRule, finiteNumbersRule],
    context: ({ req }: { req: ScopedRequest & Request }): Context => ({ scope: req.scope! }),
    formatError: formatted,
    plugins: [oneFate],
  } as ApolloDriverConfig);
