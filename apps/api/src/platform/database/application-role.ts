import { createHmac } from 'node:crypto';
import pg from 'pg';

/** A connection string as whom the application works, or in words why it has to work as the owner. */
export type ApplicationLogin = { readonly url: string; readonly warning?: never } | { readonly url?: never; readonly warning: string };

/** Nobody but the owner writes these: which migrations ran, and the parts that a trigger makes of a plan. */
const readOnly = ['migrations', 'plan_part'];

/** The one function that does for the application what its own rights do not reach to. */
const leavingDoor = 'leave_house(uuid)';

interface Login {
  readonly name: string;
  readonly password: string;
  readonly url: string;
}

/** The login of the application that goes with an owner's; undefined where the address does not say who the owner is. */
export function loginBeside(ownerUrl: string): Login | undefined {
  const address = new URL(ownerUrl);
  const owner = decodeURIComponent(address.username);
  const ownersPassword = decodeURIComponent(address.password);
  if (owner === '' || ownersPassword === '') return undefined;
  const name = `${owner.slice(0, 50)}_application`;
  const password = createHmac('sha256', ownersPassword).update(`cartwright ${name}`).digest('hex');
  return { name, password, url: Object.assign(address, { username: encodeURIComponent(name), password }).href };
}

/**
 * Makes the login of the application beside the owner's, with the rights to work and no others: no tables, no triggers, no TRUNCATE, and of what is
 * append only neither change nor removal. Its password follows from the owner's, so that every API and worker knows it from the one address.
 */
export async function makeApplicationLogin(owner: pg.Client, ownerUrl: string): Promise<ApplicationLogin> {
  const login = loginBeside(ownerUrl);
  if (!login) return { warning: `The address of the database holds no user and password: ${asOwner}` };
  const { name, password, url } = login;
  try {
    await putRole(owner, name, password);
    await grantWork(owner, name);
    const fault = await whyNotIn(url);
    if (fault === '28P01') await owner.query(`ALTER ROLE ${pg.escapeIdentifier(name)} LOGIN PASSWORD ${pg.escapeLiteral(password)}`);
    const last = fault === undefined ? undefined : await whyNotIn(url);
    if (last === undefined) return { url };
    return { warning: `The database does not let ${name} in (${last}): ${asOwner}` };
  } catch (fault) {
    return { warning: `The role ${name} could not be made (${(fault as Error).message}): ${asOwner}` };
  }
}

const asOwner =
  'the application works as the owner of the tables, and the triggers hold against it only until it removes them. Give it a login of its own with CARTWRIGHT_OWNER_URL.';

/** Roles belong to the whole server: another house on it may be at the same point. */
async function putRole(owner: pg.Client, name: string, password: string): Promise<void> {
  const { rowCount } = await owner.query('SELECT 1 FROM pg_roles WHERE rolname = $1', [name]);
  if (rowCount) return;
  const limits = 'LOGIN NOSUPERUSER NOCREATEDB NOCREATEROLE NOREPLICATION NOBYPASSRLS NOINHERIT';
  await owner.query(`CREATE ROLE ${pg.escapeIdentifier(name)} ${limits} PASSWORD ${pg.escapeLiteral(password)}`).catch((fault: unknown) => {
    // 42710 it is there by now, 23505 the same in the middle of it.
    if (!['42710', '23505'].includes((fault as { code?: string }).code ?? '')) throw fault;
  });
}

const rights = ['SELECT', 'INSERT', 'UPDATE', 'DELETE', 'TRUNCATE'] as const;

interface Table {
  readonly name: string;
  readonly isSequence: boolean;
  readonly isAppendOnly: boolean;
  /** Of `rights`, those that the application has. */
  readonly has: readonly string[];
}

/** What the application may do; tables that came with a migration are in it. Where it is so already, nothing is touched and nobody is waited for. */
export async function grantWork(owner: pg.Client, name: string): Promise<void> {
  const role = pg.escapeIdentifier(name);
  const { rows } = await owner.query<Table>(
    `SELECT relname AS name, relkind = 'S' AS "isSequence",
       EXISTS (SELECT FROM pg_trigger WHERE tgrelid = relation.oid AND tgname = relname || '_append_only') AS "isAppendOnly",
       CASE relkind WHEN 'S' THEN CASE WHEN has_sequence_privilege($1, oid, 'USAGE') THEN '{USAGE}' ELSE '{}' END::text[]
         ELSE ARRAY(SELECT each FROM unnest($2::text[]) each WHERE has_table_privilege($1, relation.oid, each)) END AS has
     FROM pg_class relation WHERE relnamespace = 'public'::regnamespace AND relkind IN ('r', 'p', 'v', 'S') ORDER BY relname`,
    [name, rights],
  );
  const wrong = rows.filter((each) => wantedOf(each).join() !== each.has.join());
  const statements = wrong.map((each) => {
    const relation = `${each.isSequence ? 'SEQUENCE' : 'TABLE'} ${pg.escapeIdentifier(each.name)}`;
    return `REVOKE ALL ON ${relation} FROM ${role}; GRANT ${wantedOf(each).join(', ')} ON ${relation} TO ${role};`;
  });
  const { rowCount: isShut } = await owner.query(
    `SELECT FROM pg_proc WHERE oid = to_regprocedure($2) AND NOT has_function_privilege($1, oid, 'EXECUTE')`,
    [name, leavingDoor],
  );
  if (isShut) statements.push(`GRANT EXECUTE ON FUNCTION ${leavingDoor} TO ${role};`);
  // Everybody may make temporary tables in a new database; nothing here needs them. Who does not own the database gets a warning, no fault.
  const { rowCount: mayMakeTemporary } = await owner.query(`SELECT WHERE has_database_privilege($1, current_database(), 'TEMPORARY')`, [
    name,
  ]);
  if (mayMakeTemporary) {
    const { rows: here } = await owner.query<{ name: string }>('SELECT current_database() AS name');
    statements.push(`REVOKE TEMPORARY ON DATABASE ${pg.escapeIdentifier(here[0]?.name ?? '')} FROM PUBLIC, ${role};`);
  }
  if (statements.length > 0) await owner.query(`BEGIN; GRANT USAGE ON SCHEMA public TO ${role}; ${statements.join(' ')} COMMIT`);
}

function wantedOf({ name, isSequence, isAppendOnly }: Table): readonly string[] {
  if (isSequence) return ['USAGE'];
  if (readOnly.includes(name)) return ['SELECT'];
  return isAppendOnly ? ['SELECT', 'INSERT'] : ['SELECT', 'INSERT', 'UPDATE', 'DELETE'];
}

async function whyNotIn(url: string): Promise<string | undefined> {
  const client = new pg.Client({ connectionString: url, connectionTimeoutMillis: 5_000 });
  client.on('error', () => undefined);
  try {
    await client.connect();
    return undefined;
  } catch (fault) {
    return (fault as { code?: string }).code ?? (fault as Error).message;
  } finally {
    void client.end().catch(() => undefined);
  }
}
