import { statfs } from 'node:fs/promises';
import { livingName } from '../config/living-name.js';

/** What takes figures that are read from the database whenever somebody looks. */
interface Gauges {
  watchRows(name: string, help: string, sql: string, label?: string): void;
  watchAsked(name: string, help: string, read: () => Promise<number>): void;
}

/** Of the house as whoever runs it looks at it; the page "How the house is" shows the same. */
export function gaugesOfHouse(metrics: Gauges): void {
  metrics.watchRows(
    'cartwright_table_bytes',
    'Size of the largest tables with their indexes.',
    `SELECT relname AS label, pg_total_relation_size(oid)::float AS value FROM pg_class
     WHERE relnamespace = 'public'::regnamespace AND relkind IN ('r', 'p') ORDER BY value DESC LIMIT 12`,
    'table',
  );
  metrics.watchRows(
    'cartwright_table_rows',
    'Rows of the tables, as PostgreSQL last counted them.',
    `SELECT relname AS label, n_live_tup::float AS value FROM pg_stat_user_tables WHERE schemaname = 'public'`,
    'table',
  );
  metrics.watchRows(
    'cartwright_changes_month',
    'Rows of a table that were changed in the last thirty days, by the log.',
    `SELECT row_table AS label, count(*)::float AS value FROM event WHERE at > now() - interval '30 days' AND row_table IS NOT NULL GROUP BY row_table`,
    'table',
  );
  metrics.watchRows(
    'cartwright_server_connections',
    'Connections that the database server has open, of all programs.',
    `SELECT count(*)::float AS value FROM pg_stat_activity WHERE backend_type = 'client backend'`,
  );
  metrics.watchRows(
    'cartwright_server_connections_limit',
    'Connections that the database server takes from programs.',
    `SELECT (current_setting('max_connections')::int - current_setting('superuser_reserved_connections')::int)::float AS value`,
  );
  metrics.watchRows(
    'cartwright_processes_alive',
    'APIs and workers that live, by the connection that each of them holds.',
    `SELECT count(*)::float AS value FROM pg_stat_activity WHERE application_name = '${livingName}'`,
  );
  metrics.watchRows(
    'cartwright_last_backup_timestamp_seconds',
    'When the last backup was compared and kept; none where there was none.',
    `SELECT extract(epoch FROM max(at))::float AS value FROM event WHERE what = 'backed up' HAVING max(at) IS NOT NULL`,
  );
  metrics.watchAsked('cartwright_disk_free_bytes', 'Free on the disk of the program.', async () => {
    const { bavail, bsize } = await statfs(process.cwd());
    return bavail * bsize;
  });
}
