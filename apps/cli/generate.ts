import 'reflect-metadata';
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Controller, Module } from '@nestjs/common';
import { NestFactory } from '@nestjs/core';
import { GraphQLSchemaBuilderModule, GraphQLSchemaFactory } from '@nestjs/graphql';
import { generate } from '@graphql-codegen/cli';
import { lexicographicSortSchema, printSchema } from 'graphql';
import { z } from 'zod';
import { allocationCaseSchema } from '#cart-allocation';
import { hangCaseSchema } from '#hang-statics';
import { sparesCaseSchema } from '#hardware-count';
import { examinationsCaseSchema } from '#inspection-calendar';
import { tourFileSchema } from '#tour-file';
import { truckCaseSchema } from '#truck-pack';
import { resolvers } from '../api/src/resolvers.js';

@Controller()
class Nothing {}

@Module({ imports: [GraphQLSchemaBuilderModule], controllers: [Nothing] })
class SchemaModule {}

/** Writes what is generated: the GraphQL schema, the typed operations of the screens, and the JSON Schema of every file format. */
export async function main(_args: readonly string[], root: string): Promise<number> {
  const folder = join(root, 'libs', 'contracts');
  mkdirSync(join(folder, 'schemas'), { recursive: true });
  const schemas = {
    'hang-statics-case': hangCaseSchema,
    'cart-allocation-case': allocationCaseSchema,
    'truck-pack-case': truckCaseSchema,
    'spares-case': sparesCaseSchema,
    'examinations-case': examinationsCaseSchema,
    'tour-file': tourFileSchema,
  };
  for (const [name, schema] of Object.entries(schemas))
    writeFileSync(join(folder, 'schemas', `${name}.schema.json`), `${JSON.stringify(z.toJSONSchema(schema, { io: 'input' }), null, 2)}\n`);

  const app = await NestFactory.create(SchemaModule, { logger: false });
  await app.init();
  const schema = await app.get(GraphQLSchemaFactory).create(resolvers);
  writeFileSync(join(folder, 'schema.graphql'), `${printSchema(lexicographicSortSchema(schema))}\n`);
  await app.close();

  for (const file of ['gql.ts', 'graphql.ts', 'index.ts']) rmSync(join(folder, file), { force: true });
  await generate(
    {
      cwd: root,
      silent: true,
      schema: join(folder, 'schema.graphql'),
      documents: [join(root, 'apps/web/src/**/*.{ts,tsx}')],
      ignoreNoDocuments: true,
      generates: {
        [`${folder}/`]: {
          preset: 'client',
          presetConfig: { fragmentMasking: false, persistedDocuments: { hashAlgorithm: 'sha256' } },
          config: {
            documentMode: 'string',
            useTypeImports: true,
            emitLegacyCommonJSImports: false,
            importExtension: '.js',
            enumsAsTypes: true,
            scalars: {
              PackPlanJson: '../pack-plan/index.js#PackPlan',
              CartsJson: '../pack-plan/index.js#CartsResult',
              PicksHeadJson: '../pack-plan/index.js#PicksHead',
              HangJson: '../pack-plan/index.js#HangResult',
              HardwareJson: '../pack-plan/index.js#HardwareResult',
              TrucksHeadJson: '../pack-plan/index.js#TrucksHead',
              TruckJson: '../pack-plan/index.js#TruckResultOne',
              DueJson: '../pack-plan/index.js#DueResult',
              WorkListJson: '../pack-plan/index.js#WorkList',
              BetweenShowsJson: '../pack-plan/index.js#BetweenShows',
              WholeTourJson: '../pack-plan/index.js#WholeTour',
              SeasonJson: '../inspection-calendar/index.js#SeasonAnswer',
              SeenItemsJson: '../inspection-calendar/index.js#SeenItems',
              TourJson: '../tour-file/index.js#Tour',
              VenueJson: '../tour-file/index.js#Venue',
              ItemJson: '../tour-file/index.js#Item',
              ModelJson: 'unknown',
              KitJson: 'unknown',
              AnyJson: 'unknown',
            },
          },
        },
      },
    },
    true,
  );
  writeOperations(folder);
  return 0;
}

/** What the screens were built with, for the API, which takes nothing else from strangers: hash -> document. */
function writeOperations(folder: string): void {
  const listed = join(folder, 'persisted-documents.json');
  const documents = JSON.parse(readFileSync(listed, 'utf8')) as Record<string, string>;
  rmSync(listed);
  const lines = Object.entries(documents).map(([hash, document]) => `  '${hash}':\n    ${JSON.stringify(document)},\n`);
  writeFileSync(
    join(folder, 'persisted-operations.ts'),
    `/* eslint-disable */\n/** Operations of the screens by the SHA-256 of their documents. */\nexport const persistedOperations: Readonly<Record<string, string>> = {\n${lines.join('')}};\n`,
  );
}
