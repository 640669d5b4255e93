import { graphql } from '#contracts';
import type { BoxModel, FrameModel, GridModel } from '#tour-file';
import { request } from '../../../platform/request.js';
import type { Models } from './hang-preview.js';

const kitQuery = graphql(`query HangModels { catalogueModels { kind model data } }`);

/** Models that a hang is made of: boxes and grids whole, the steel by name. */
export interface Kit extends Models {
  readonly names: Record<string, readonly string[]>;
}

export async function readKit(): Promise<Kit> {
  const { catalogueModels } = await request(kitQuery);
  const ofKind = <T>(kind: string) => catalogueModels.filter((each) => each.kind === kind).map((each) => each.data as T);
  const names = Object.fromEntries(
    ['hoists', 'shackles', 'slings', 'looms', 'frames'].map((kind) => [
      kind,
      catalogueModels.filter((each) => each.kind === kind).map((each) => each.model),
    ]),
  );
  return { boxes: ofKind<BoxModel>('boxes'), grids: ofKind<GridModel>('grids'), frames: ofKind<FrameModel>('frames'), names };
}
