import { textHash } from '#kernel';
import { type PicksResult, structurePoints } from '#pack-plan';
import { node, renderMarkup } from '../tree/index.js';

/**
 * The points of a show as the scene description of an MVR file (DIN SPEC 15801): one Support a point, in millimetres, z up, axes of the stage plan.
 * It stands at the height of the point, at trim height where that is not on file. The standard has no field for a load, so it stands in Function; ChainLength is 0, not stated. Points without a place on the stage are left out.
 */
export function scenePoints(picks: PicksResult, planId: string): string {
  const placed = structurePoints(picks).filter((each) => each.xMm !== null && each.yMm !== null);
  const supports = placed.map((each) =>
    node(
      'Support',
      { name: each.point, uuid: uuidOf(`${planId} ${each.point}`) },
      node('Matrix', {}, `{1,0,0}{0,1,0}{0,0,1}{${each.xMm},${each.yMm},${each.heightMm ?? each.trimHeightMm}}`),
      node(
        'Function',
        {},
        `at rest ${Math.round(each.restN)} N, worst ${Math.round(each.verticalN)} N, with factor ${Math.round(each.verticalDynamicN)} N, aside ${Math.round(each.horizontalN)} N, with factor ${Math.round(each.horizontalDynamicN)} N${each.directionDeg === null ? '' : ` toward ${Math.round(each.directionDeg)} deg`}`,
      ),
      node('ChainLength', {}, '0'),
      node('Geometries', {}),
      node('GDTFMode', {}),
    ),
  );
  const scene = node(
    'GeneralSceneDescription',
    { verMajor: '1', verMinor: '6', provider: 'Cartwright', providerVersion: '1' },
    node('Scene', {}, node('Layers', {}, node('Layer', { name: 'Points', uuid: uuidOf(planId) }, node('ChildList', {}, ...supports)))),
  );
  return `<?xml version="1.0" encoding="UTF-8" standalone="no"?>\n${renderMarkup(scene)}\n`;
}

/** The same name gives the same identifier: a UUID of version 8 (RFC 9562), its digits from hashes of the name. */
function uuidOf(name: string): string {
  const digits = [0, 1, 2, 3]
    .map((part) => textHash(`${part} ${name}`))
    .join('')
    .replace(/[^0-9a-f]/g, '')
    .padEnd(32, '0')
    .slice(0, 32);
  const hex = `${digits.slice(0, 12)}8${digits.slice(13, 16)}a${digits.slice(17)}`;
  return [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20)].join('-');
}
