import { groupDigits } from '#kernel';
import type { LogFault, LogVerdict } from '../../api/src/platform/seal/verify-log.js';

/** What was found of a log, sentence by sentence; a line that is not as it was sealed is named. */
export function sentencesOf({ fault, lines, seals, head, sealedAt, wantedAt, reworded, unsealed }: LogVerdict, wanted?: string): string[] {
  const counted = `${groupDigits(lines)} lines in ${groupDigits(seals)} seals`;
  if (fault) return [`NOT AS SEALED: ${faultWords(fault)}`, `Before it, ${counted} are as they were sealed.`];
  return [
    `${counted} are as they were sealed${sealedAt === null ? '' : `, the newest ${sealedAt}`}.`,
    ...(head === '' ? [] : [`Head: ${head}`]),
    ...(wantedAt ? [`The head ${wanted} stands for the first ${groupDigits(wantedAt.lines)} lines, sealed ${wantedAt.sealedAt}.`] : []),
    ...(reworded > 0 ? [`${groupDigits(reworded)} lines lost the name of a person who left; that is a line of the log itself.`] : []),
    ...(unsealed > 0 ? [`${groupDigits(unsealed)} newer lines wait for the next seal.`] : []),
  ];
}

function faultWords(fault: LogFault): string {
  if (fault.kind === 'head') return `the head ${fault.head} is none of this log: what stood in it then was taken out or sealed anew.`;
  if (fault.kind === 'seal')
    return `seal ${fault.seal} does not agree with its lines (${fault.first} to ${fault.last}) and the seal before it.`;
  const sealed = fault.seal === null ? '' : ` of seal ${fault.seal}`;
  const now = fault.now === null ? '' : ` It says now: ${fault.now}`;
  if (fault.kind === 'missing') return `line ${fault.line}${sealed} is missing.`;
  if (fault.kind === 'out of order') return `line ${fault.line}${sealed} stands out of its order.${now}`;
  if (fault.kind === 'put in') return `line ${fault.line} was put in behind lines that are sealed.${now}`;
  return `line ${fault.line}${sealed} was changed.${now}`;
}
