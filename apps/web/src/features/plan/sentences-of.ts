/** Several things that are said, in one line. */
export const sentencesOf = (all: readonly { readonly sentence: string }[]): string => all.map((each) => each.sentence).join('; ');
