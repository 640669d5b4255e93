import ts from 'typescript';

/** One small change of a source: characters from `start` to `end` become `text`. */
export interface Mutant {
  readonly start: number;
  readonly end: number;
  readonly text: string;
  readonly what: string;
}

const operators: Partial<Record<ts.SyntaxKind, string>> = {
  [ts.SyntaxKind.PlusToken]: '-',
  [ts.SyntaxKind.MinusToken]: '+',
  [ts.SyntaxKind.AsteriskToken]: '/',
  [ts.SyntaxKind.SlashToken]: '*',
  [ts.SyntaxKind.LessThanToken]: '<=',
  [ts.SyntaxKind.LessThanEqualsToken]: '<',
  [ts.SyntaxKind.GreaterThanToken]: '>=',
  [ts.SyntaxKind.GreaterThanEqualsToken]: '>',
  [ts.SyntaxKind.EqualsEqualsEqualsToken]: '!==',
  [ts.SyntaxKind.ExclamationEqualsEqualsToken]: '===',
  [ts.SyntaxKind.AmpersandAmpersandToken]: '||',
  [ts.SyntaxKind.BarBarToken]: '&&',
  [ts.SyntaxKind.PlusEqualsToken]: '-=',
  [ts.SyntaxKind.MinusEqualsToken]: '+=',
};
const calls: Record<string, string> = {
  min: 'max',
  max: 'min',
  some: 'every',
  every: 'some',
  floor: 'ceil',
  ceil: 'floor',
  sin: 'cos',
  cos: 'sin',
};

/** Every mutant of a source: an operator turned, a bound moved by one, a number, a truth, a condition or a call changed, a statement left out. */
export function mutantsOf(source: string): readonly Mutant[] {
  const file = ts.createSourceFile('source.ts', source, ts.ScriptTarget.Latest, true);
  const found: Mutant[] = [];
  const add = (node: ts.Node, text: string, what: string) => found.push({ start: node.getStart(), end: node.getEnd(), text, what });
  const visit = (node: ts.Node): void => {
    if (ts.isTypeNode(node) || ts.isImportDeclaration(node) || ts.isExportDeclaration(node)) return;
    if (ts.isInterfaceDeclaration(node) || ts.isTypeAliasDeclaration(node) || isMessage(node)) return;
    mutate(node, add);
    ts.forEachChild(node, visit);
  };
  visit(file);
  return found;
}

function mutate(node: ts.Node, add: (node: ts.Node, text: string, what: string) => void): void {
  if (ts.isBinaryExpression(node)) {
    const { operatorToken: token } = node;
    const other = operators[token.kind];
    if (other !== undefined && !isText(node)) add(token, other, `${token.getText()} becomes ${other}`);
  } else if (ts.isNumericLiteral(node) && !ts.isElementAccessExpression(node.parent))
    add(node, String(Number(node.text) + 1), `${node.text} plus 1`);
  else if (node.kind === ts.SyntaxKind.TrueKeyword) add(node, 'false', 'true becomes false');
  else if (node.kind === ts.SyntaxKind.FalseKeyword) add(node, 'true', 'false becomes true');
  else if (ts.isIfStatement(node)) add(node.expression, `!(${node.expression.getText()})`, 'a condition turned');
  else if (ts.isConditionalExpression(node)) add(node.condition, `!(${node.condition.getText()})`, 'a choice turned');
  else if (ts.isPropertyAccessExpression(node) && ts.isCallExpression(node.parent) && node.parent.expression === node) {
    const other = calls[node.name.text];
    if (other !== undefined) add(node.name, other, `${node.name.text} becomes ${other}`);
  } else if (ts.isExpressionStatement(node) && ts.isCallExpression(node.expression)) add(node, ';', 'a call left out');
}

/** What an error says is read by people, not by code. */
const isMessage = (node: ts.Node): boolean => ts.isNewExpression(node) && /Error$/.test(node.expression.getText());

/** Joining texts is not arithmetic. */
function isText(node: ts.BinaryExpression): boolean {
  return [node.left, node.right].some(
    (side) => ts.isStringLiteral(side) || ts.isTemplateExpression(side) || ts.isNoSubstitutionTemplateLiteral(side),
  );
}
