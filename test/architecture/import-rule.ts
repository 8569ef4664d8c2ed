import { relative, sep } from 'node:path';
import type { Rule } from 'eslint';
import { judgeImport } from './import-table.ts';

/** A node that names a module; TypeScript's own nodes are not in the types of ESLint. */
interface Importing {
  readonly source?: { readonly value?: unknown } | null;
  readonly importKind?: string;
  readonly exportKind?: string;
  readonly expression?: { readonly value?: unknown };
}

/** The import table as a lint rule of a repository at `root`. */
export function importRule(root: string): Rule.RuleModule {
  return {
    meta: { type: 'problem', schema: [], messages: { refused: '{{why}} See test/architecture/import-table.ts.' } },
    create(context) {
      const file = relative(root, context.filename).split(sep).join('/');
      const judge = (node: Rule.Node, specifier: unknown, isTypeOnly: boolean) => {
        const why = typeof specifier === 'string' ? judgeImport(file, specifier, isTypeOnly) : null;
        if (why !== null) context.report({ node, messageId: 'refused', data: { why } });
      };
      const judgeSource = (node: Rule.Node) => {
        const { source, importKind, exportKind } = node as Importing;
        judge(node, source?.value, importKind === 'type' || exportKind === 'type');
      };
      return {
        ImportDeclaration: judgeSource,
        ExportNamedDeclaration: judgeSource,
        ExportAllDeclaration: judgeSource,
        ImportExpression: judgeSource,
        TSImportType: (node: Rule.Node) => judge(node, (node as Importing).source?.value, true),
        TSExternalModuleReference: (node: Rule.Node) => judge(node, (node as Importing).expression?.value, false),
        'CallExpression[callee.name="require"]': (node: Rule.Node) => {
          const [argument] = node.type === 'CallExpression' ? node.arguments : [];
          judge(node, argument?.type === 'Literal' ? argument.value : undefined, false);
        },
      };
    },
  };
}
