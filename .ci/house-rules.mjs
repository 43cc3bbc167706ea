// House rules that ESLint does not bring: each says what to do when it fires. Used by eslint.config.mjs.
import path from 'node:path';

const MOST_EXPORTS = 5;
const MOST_METHODS = 10;
const TELLS_NOTHING = /^(utils?|helpers?|common|misc)([.-]|$)/i;

/** Names of decorators by which a method becomes an operation that people can ask for. */
const OPERATIONS = new Set(['Query', 'Mutation', 'Subscription', 'Get', 'Post', 'Put', 'Patch', 'Delete', 'All']);

const decoratorName = (decorator) => decorator.expression.callee?.name ?? decorator.expression.name;
const isFunction = (node) => node?.type === 'ArrowFunctionExpression' || node?.type === 'FunctionExpression';

/** What an export statement exports that exists at run time; types are counted by nobody. */
const exportedValues = ({ declaration, specifiers, exportKind }) => {
  if (exportKind === 'type') return 0;
  if (!declaration) return specifiers.filter((one) => one.exportKind !== 'type').length;
  if (/^TS(Interface|TypeAlias)/.test(declaration.type)) return 0;
  return declaration.type === 'VariableDeclaration' ? declaration.declarations.length : 1;
};

const fewExports = {
  meta: { schema: [{ type: 'object', properties: { most: { type: 'number' } } }] },
  create(context) {
    const most = context.options[0]?.most ?? MOST_EXPORTS;
    return {
      Program(program) {
        const count = program.body
          .filter((node) => node.type === 'ExportNamedDeclaration')
          .reduce((sum, node) => sum + exportedValues(node), 0);
        if (count > most)
          context.report({
            node: program,
            message: `This library file exports ${count} values (at most ${most}). One quantity or judgement a file: divide it by noun or verb.`,
          });
      },
    };
  },
};

const fewMethods = {
  create(context) {
    const judge = (node, count) => {
      if (count > MOST_METHODS)
        context.report({
          node,
          message: `This repository answers ${count} questions (at most ${MOST_METHODS}). Divide it by what is asked for.`,
        });
    };
    return {
      ClassBody: (node) => judge(node, node.body.filter((member) => member.type === 'MethodDefinition' && member.kind === 'method').length),
      'ExportNamedDeclaration > VariableDeclaration > VariableDeclarator > ObjectExpression': (node) =>
        judge(node, node.properties.filter((property) => isFunction(property.value)).length),
    };
  },
};

const tellingName = {
  create: (context) => ({
    Program(node) {
      const wrong = context.filename.split(path.sep).find((part) => TELLS_NOTHING.test(part));
      if (wrong) context.report({ node, message: `"${wrong}" says nothing. Name it after what it holds: a noun or a verb of the domain.` });
    },
  }),
};

const namedPermission = {
  create: (context) => ({
    MethodDefinition(node) {
      const names = (node.decorators ?? []).map(decoratorName);
      const operation = names.find((name) => OPERATIONS.has(name));
      if (operation && !names.includes('Allow') && !names.includes('Public'))
        context.report({ node, message: `@${operation} without @Allow(Permission.…) or @Public('why'). Say who may ask for this.` });
    },
  }),
};

const RULES = { 'few-exports': fewExports, 'few-methods': fewMethods, 'telling-name': tellingName, 'named-permission': namedPermission };

/** The plugin, under the name `house`. */
export const house = { rules: RULES };
