/** Values that hold words for people. What a program must know of them stands beside them as a code. */
const sentences = /^(sentences?|reasons?|why|exceptions?|titles?)$/i;
const tests = new Set(['startsWith', 'endsWith', 'includes', 'match', 'matchAll', 'search', 'indexOf', 'test', 'exec']);

/** The name under which a value is reached: the last part of a path, through casts and `?.`. */
function nameOf(node) {
  if (!node) return undefined;
  if (node.type === 'Identifier') return node.name;
  if (node.type === 'MemberExpression') return node.computed ? nameOf(node.object) : nameOf(node.property);
  if (['ChainExpression', 'TSNonNullExpression', 'TSAsExpression'].includes(node.type)) return nameOf(node.expression);
  if (node.type === 'LogicalExpression') return nameOf(node.left);
  if (node.type === 'CallExpression' && node.callee.type === 'MemberExpression') return nameOf(node.callee.object);
  return undefined;
}

const isSentence = (node) => sentences.test(nameOf(node) ?? '');
const isText = (node) =>
  (node.type === 'Literal' && (typeof node.value === 'string' || 'regex' in node)) || node.type === 'TemplateLiteral';

/**
 * Nothing decides by reading a sentence: no startsWith, endsWith, includes, match, search, indexOf or regular expression on what is called sentence,
 * reason, why, exception or title, and no comparison of such a value with words; an empty text is no word. Only libs/words knows the words.
 */
export const noReadingSentences = {
  meta: {
    type: 'problem',
    schema: [],
    messages: { read: '"{{name}}" is words for people: decide by a code beside it, not by what it says.' },
  },
  create(context) {
    const say = (node, value) => context.report({ node, messageId: 'read', data: { name: nameOf(value) } });
    return {
      CallExpression(node) {
        const { callee } = node;
        if (callee.type !== 'MemberExpression' || callee.property.type !== 'Identifier' || !tests.has(callee.property.name)) return;
        const ofPattern = ['test', 'exec'].includes(callee.property.name);
        const read = ofPattern ? node.arguments[0] : callee.object;
        if (isSentence(read)) say(node, read);
      },
      BinaryExpression(node) {
        if (!['===', '!==', '==', '!='].includes(node.operator)) return;
        for (const [value, other] of [
          [node.left, node.right],
          [node.right, node.left],
        ])
          if (isSentence(value) && isText(other) && other.value !== '') say(node, value);
      },
    };
  },
};
