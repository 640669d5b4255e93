import { DataSource, type DataSourceOptions } from 'typeorm';
import { migrations } from '../../../migrations/index.js';
import { entities } from './entities.js';

export function dataSourceOptions(databaseUrl: string): DataSourceOptions {
  return {
    type: 'postgres',
    url: databaseUrl,
    entities,
    migrations,
    synchronize: false,
    migrationsRun: false,
    migrationsTransactionMode: 'each',
    // A database that takes connections and says nothing must not hold requests for ever.
    extra: { max: 12, connectionTimeoutMillis: 10_000 },
  };
}

/** Brings the database to the newest migration; gives back how many were run. */
export async function migrate(databaseUrl: string): Promise<number> {
  const dataSource = await new DataSource(dataSourceOptions(databaseUrl)).initialize();
  try {
    return (await dataSource.runMigrations()).length;
  } finally {
    await dataSource.destroy();
  }
}
