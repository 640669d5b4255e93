/** Every number of an answer, one at a time, made a little larger; each with the path to it, as in `joints.0.loadN`. */
export function* changedNumbers(answer: unknown, leftOut: readonly string[] = [], path = ''): Generator<[path: string, changed: unknown]> {
  if (typeof answer === 'number') yield [path, answer + Math.max(1, Math.abs(answer) / 50)];
  if (typeof answer !== 'object' || answer === null) return;
  for (const [key, value] of Object.entries(answer as Record<string, unknown>)) {
    if (leftOut.includes(key)) continue;
    for (const [at, changed] of changedNumbers(value, leftOut, path === '' ? key : `${path}.${key}`))
      yield [
        at,
        Array.isArray(answer)
          ? answer.map((each, index) => (index === Number(key) ? changed : (each as unknown)))
          : { ...answer, [key]: changed },
      ];
  }
}
